/** The limits that the numbers of a point are held to, each with the rule that holds them to it. */

import { airTemperatureCost } from '../evaluate/air-temperature/cost.ts';
import { SHARE_OF_TOLERANCE } from '../evaluate/air-temperature/cost-of-error.ts';
import { expandedUncertainty } from '../evaluate/budget/uncertainty-facts.ts';
import { highestHeadTemperature, humidityAtSensor, marginToDewPoint } from '../evaluate/dryness/dryness.ts';
import { riseReachable } from '../evaluate/dryness/reachable-rise.ts';
import { type Fact, isKnown, type KnownFact } from '../evaluate/facts/fact.ts';
import type { Setting } from '../evaluate/facts/site-settings.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { resolutionError } from '../evaluate/signals/signal-facts.ts';
import { voltageAtProbe } from '../evaluate/supply/facts.ts';
import { loopVoltageLeft } from '../evaluate/supply/loop-facts.ts';
import type { Located } from '../model/located.ts';
import type { Dimension } from '../quantity/dimension.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import type { Quantity, QuantityRange } from '../quantity/quantity.ts';
import { RESOLUTION_SHARE } from '../rules/support/signal-views.ts';
import { stated, type Text } from './document.ts';

export interface HeldFact {
  readonly rule: string;
  readonly fact: KnownFact;
  readonly bound: 'at most' | 'at least';
  readonly limit: Text;
  readonly isKept: boolean;
}

/** Only of rules that compare one number with one limit; the others have their say among the findings. */
export function heldFacts(view: PointEvaluation): readonly HeldFact[] {
  const held: readonly (readonly HeldFact[])[] = [...drynessLimits(view), ...supplyLimits(view), ...reportLimits(view)];
  return held.flat();
}

function drynessLimits({ heater, facts, settings, humidityProbeModel, space }: PointEvaluation) {
  const model = humidityProbeModel?.model?.value;
  const humidity = facts.get(humidityAtSensor);
  if (!heater.on) {
    return [
      most('sensor-may-condense', humidity, setting(settings.unheatedHumidityLimit, 'relative-humidity')),
      least('sensor-may-condense', facts.get(marginToDewPoint), setting(settings.margin, 'temperature-difference')),
    ];
  }
  if (space === undefined || model?.heater === undefined) return [];
  return [
    most('heater-rise-short', humidity, setting(settings.sensorHumidityLimit, 'relative-humidity')),
    most('head-too-hot', facts.get(highestHeadTemperature), highEnd(model.ranges?.value.temperature)),
    least('heater-rise-unreachable', facts.get(riseReachable), given(heater.rise)),
  ];
}

function supplyLimits({ heater, facts, humidityProbeModel, transmitterModel, point }: PointEvaluation) {
  const model = humidityProbeModel?.model?.value;
  const voltage = facts.get(voltageAtProbe);
  const fed = point.transmitter === undefined ? model?.supply : transmitterModel?.model?.value.supply;
  const minimum = heater.on ? model?.heater?.value.minimumVoltage : undefined;
  const loop = transmitterModel?.model?.value.loopMinimumVoltage;
  return [
    least('supply-out-of-range', voltage, lowEnd(fed?.value.voltage)),
    least('heater-supply-low', voltage, given(minimum)),
    ...[...(point.signals?.value.keys() ?? [])].map((name) =>
      least('loop-load-high', facts.get(loopVoltageLeft(name)), given(loop)),
    ),
  ];
}

/** The errors of the air temperature, with the rule that speaks of each. */
const ERRORS = [
  ['insertion-short', airTemperatureCost['stem-conduction']],
  ['probes-too-close', airTemperatureCost['head-warming']],
  ['probes-too-far', airTemperatureCost.gradient],
  ['response-too-slow', airTemperatureCost.lag],
] as const;

function reportLimits({ reports, facts, signals }: PointEvaluation) {
  return reports.flatMap(({ quantity, report }) => {
    const { tolerance } = report.value;
    const share = partOf(tolerance, SHARE_OF_TOLERANCE, 'a third of ');
    return [
      most('tolerance-missed', facts.get(expandedUncertainty(quantity)), given(tolerance)),
      ...ERRORS.map(([rule, fact]) => most(rule, facts.get(fact(quantity)), share)),
      ...signals
        .filter((signal) => signal.quantity === quantity)
        .map(({ name }) =>
          most(
            'resolution-coarse',
            facts.get(resolutionError(name)),
            partOf(tolerance, RESOLUTION_SHARE, 'a tenth of '),
          ),
        ),
    ];
  });
}

interface Limit {
  readonly text: Text;
  readonly value: number;
}

function most(rule: string, fact: Fact | undefined, limit: Limit | undefined): readonly HeldFact[] {
  if (!isKnown(fact) || limit === undefined) return [];
  return [{ rule, fact, bound: 'at most', limit: limit.text, isKept: fact.value <= limit.value }];
}

function least(rule: string, fact: Fact | undefined, limit: Limit | undefined): readonly HeldFact[] {
  if (!isKnown(fact) || limit === undefined) return [];
  return [{ rule, fact, bound: 'at least', limit: limit.text, isKept: fact.value >= limit.value }];
}

function setting({ value, origin }: Setting, dimension: Dimension): Limit {
  const text: Text = [{ kind: 'stated', text: showQuantity(value, dimension) }];
  return { value, text: origin === undefined ? [...text, ' (built in)'] : text };
}

function given(located: Located<Quantity> | undefined): Limit | undefined {
  return located === undefined ? undefined : { value: located.value.value, text: stated(located) };
}

function lowEnd(located: Located<QuantityRange> | undefined): Limit | undefined {
  return located === undefined ? undefined : endOf(located.value.low, located.value.dimension);
}

function highEnd(located: Located<QuantityRange> | undefined): Limit | undefined {
  return located === undefined ? undefined : endOf(located.value.high, located.value.dimension);
}

function endOf(value: number, dimension: Dimension): Limit {
  return { value, text: [{ kind: 'stated', text: showQuantity(value, dimension) }] };
}

function partOf(located: Located<Quantity> | undefined, share: number, words: string): Limit | undefined {
  return located === undefined ? undefined : { value: located.value.value * share, text: [words, ...stated(located)] };
}
