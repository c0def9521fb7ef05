/** The limits that the numbers of a point are held to, each with the rule that holds them to it. */
import type { ErrorKind } from '../evaluate/air-temperature/error-models.ts';
import { costLimit } from '../evaluate/air-temperature/limits.ts';
import { toleranceLimit } from '../evaluate/budget/limits.ts';
import { headTemperatureLimit, riseAsked, sensorHumidityLimit, sensorMargin } from '../evaluate/dryness/limits.ts';
import { type Held, held, type Limit } from '../evaluate/facts/limit.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { ResolvedPoint } from '../evaluate/resolved/resolved-point.ts';
import { resolutionLimit } from '../evaluate/signals/limits.ts';
import { heaterVoltageLimit, loopVoltageLimit, supplyVoltageLimit } from '../evaluate/supply/limits.ts';

export interface HeldFact extends Held {
  readonly rule: string;
}

type RuleLimit = readonly [rule: string, limit: Limit<ResolvedPoint>];

/** Only of rules that compare one number with one limit; the others have their say among the findings. */
export function heldFacts(view: PointEvaluation): readonly HeldFact[] {
  return [...drynessLimits(view), ...supplyLimits(view), ...reportLimits(view)].flatMap(([rule, limit]) => {
    const found = held(limit, view);
    return found === undefined ? [] : [{ ...found, rule }];
  });
}

function drynessLimits({ heater, humidityProbeModel, space }: PointEvaluation): readonly RuleLimit[] {
  if (!heater.on) {
    return [
      ['sensor-may-condense', sensorHumidityLimit],
      ['sensor-may-condense', sensorMargin],
    ];
  }
  if (space === undefined || humidityProbeModel?.model?.value.heater === undefined) return [];
  return [
    ['heater-rise-short', sensorHumidityLimit],
    ['head-too-hot', headTemperatureLimit],
    ['heater-rise-unreachable', riseAsked],
  ];
}

function supplyLimits({ point }: PointEvaluation): readonly RuleLimit[] {
  return [
    ['supply-out-of-range', supplyVoltageLimit],
    ['heater-supply-low', heaterVoltageLimit],
    ...[...(point.signals?.value.keys() ?? [])].map((name): RuleLimit => ['loop-load-high', loopVoltageLimit(name)]),
  ];
}

/** The errors of the air temperature, with the rule that speaks of each. */
const COSTS: readonly (readonly [rule: string, kind: ErrorKind])[] = [
  ['insertion-short', 'stem-conduction'],
  ['probes-too-close', 'head-warming'],
  ['probes-too-far', 'gradient'],
  ['response-too-slow', 'lag'],
];

function reportLimits({ reports, signals }: PointEvaluation): readonly RuleLimit[] {
  return reports.flatMap(({ quantity }): readonly RuleLimit[] => [
    ['tolerance-missed', toleranceLimit(quantity)],
    ...COSTS.map(([rule, kind]): RuleLimit => [rule, costLimit(kind)(quantity)]),
    ...signals
      .filter((signal) => signal.quantity === quantity)
      .map((signal): RuleLimit => ['resolution-coarse', resolutionLimit(signal)]),
  ]);
}
