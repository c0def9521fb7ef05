/** Steps of the handover until the probes sit in the air as drawn: hazards, insertion, attitude, spacing, insulation. */

import { upperFirst } from '../base/words.ts';
import { smallestTold } from '../evaluate/air-temperature/limits.ts';
import { highestHeadTemperature } from '../evaluate/dryness/dryness.ts';
import { type Fact, isKnown, type KnownFact, showCorner, showFact } from '../evaluate/facts/fact.ts';
import { kept } from '../evaluate/facts/limit.ts';
import { fittingSurface } from '../evaluate/mounting/fitting-facts.ts';
import { fittingStaysDry, wallStaysDry } from '../evaluate/mounting/limits.ts';
import { wallSurface } from '../evaluate/mounting/wall-facts.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { inSampleLine } from '../evaluate/resolved/mounted-stem.ts';
import type { Located } from '../model/located.ts';
import type { AirTemperatureProbeMounting, HumidityProbeMounting } from '../model/model-types.generated.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { StepDraft } from './step.ts';
import { cautionOf, hazardsOf } from './step-cautions.ts';

/** Of a space that names hazards. */
export function hazardStep(view: PointEvaluation): readonly StepDraft[] {
  const hazards = hazardsOf(view);
  const title = view.space?.located.value.title?.value ?? view.space?.id;
  if (hazards.length === 0 || title === undefined) return [];
  return [
    {
      name: 'hazards-seen-to',
      title: 'Hazards seen to',
      todo: `Before anything is opened or fitted at ${title}, see to its hazards: ${hazards.join(', ')}.`,
      expect: 'Whoever is responsible for the plant has allowed the work, in writing where local rules ask for it.',
      facts: [],
      ...cautionOf(view, 'entering'),
    },
  ];
}

export function fittingSteps(view: PointEvaluation): readonly StepDraft[] {
  const { humidityProbe, airTemperatureProbe } = view.point;
  return [
    ...fitted(view, 'humidity-probe', humidityProbe?.value.mounting?.value),
    ...fitted(view, 'air-temperature-probe', airTemperatureProbe?.value.mounting?.value),
    ...insulated(view),
    ...wallSeen(view),
  ];
}

const PROBE_WORDS = { 'humidity-probe': 'humidity probe', 'air-temperature-probe': 'air-temperature probe' } as const;

type Mounting = HumidityProbeMounting & AirTemperatureProbeMounting;

function fitted(
  view: PointEvaluation,
  probe: keyof typeof PROBE_WORDS,
  mounting: Mounting | undefined,
): readonly StepDraft[] {
  if (mounting === undefined || inSampleLine(mounting)) return [];
  const { insertion, attitude, spacing, position } = mounting;
  const drawn = [
    lengthWords(insertion, 'deep'),
    attitude?.value.replace('-', ' '),
    lengthWords(spacing, 'from the humidity probe'),
    position === undefined ? undefined : `${positionWords(position.value)} it`,
  ].filter((words) => words !== undefined);
  if (drawn.length === 0) return [];
  const seen = probe === 'humidity-probe' ? headSeen(view) : errorSeen(view);
  return [
    {
      name: `${probe}-fitted`,
      title: `${upperFirst(PROBE_WORDS[probe])} fitted`,
      todo: `Fit the ${PROBE_WORDS[probe]} ${drawn.join(', ')}.`,
      expect: seen.expect,
      facts: seen.facts,
      ...cautionOf(view, 'fitting'),
    },
  ];
}

type Seen = Pick<StepDraft, 'expect' | 'facts'>;

function headSeen({ facts, point, humidityProbeModel }: PointEvaluation): Seen {
  const hottest = facts.get(highestHeadTemperature);
  const range = humidityProbeModel?.model?.value.ranges?.value.temperature;
  const drains = point.humidityProbe?.value.mounting?.value.attitude?.value !== 'head-up';
  const stands = `The head is in the moving air${drains ? ', and no water runs along the stem to the sensor' : ''}`;
  if (!isKnown(hottest) || range === undefined) return { expect: `${stands}.`, facts: [] };
  const limit = showQuantity(range.value.high, 'temperature');
  return { expect: `${stands}; it gets no hotter than ${showFact(hottest)} of ${limit} allowed.`, facts: [hottest] };
}

/** The error is one and the same for every report that takes its air temperature from the probe. */
function errorSeen(view: PointEvaluation): Seen {
  const { reports, heater } = view;
  const same = `It measures the same air as the humidity probe${heater.on ? ', out of the warmth of its head' : ''}`;
  const known = reports.flatMap(({ quantity }) => {
    const seen = kept(smallestTold('stem-conduction')(quantity), view);
    return seen === undefined ? [] : [seen.fact];
  });
  const [error] = known;
  if (error === undefined) return { expect: `${same}.`, facts: [] };
  return {
    expect: `${same}; the wall puts it wrong by no more than ${showFact(error)}${cornerOf(error)}.`,
    facts: [error],
  };
}

function insulated(view: PointEvaluation): readonly StepDraft[] {
  const { humidityProbe, airTemperatureProbe } = view.point;
  const given = [humidityProbe, airTemperatureProbe].flatMap((probe) => probe?.value.mounting?.value.insulation ?? []);
  const [first] = given;
  if (first === undefined || !(first.value.value > 0)) return [];
  const margin = view.facts.get(fittingSurface.margin);
  const isDry = kept(fittingStaysDry, view) !== undefined;
  return [
    {
      name: 'fitting-insulated',
      title: 'Fitting insulated',
      todo: `Insulate the fittings all around, ${showQuantity(first.value.value, 'length')} thick, without a gap to the insulation of the wall.`,
      expect: isKnown(margin)
        ? `${isDry ? 'It stays dry inside' : 'Water settles on it inside, and none of that runs to a probe'}: ${marginWords(margin, isDry)}.`
        : 'Nothing of the fittings is bare outside, and nothing drips from them inside.',
      facts: isKnown(margin) ? [margin] : [],
      ...cautionOf(view, 'fitting'),
    },
  ];
}

function wallSeen({ space }: PointEvaluation): readonly StepDraft[] {
  const margin = space?.facts.get(wallSurface.margin);
  if (space === undefined || !isKnown(margin)) return [];
  const isDry = kept(wallStaysDry, space) !== undefined;
  return [
    {
      name: 'wall-seen',
      title: 'Wall around the fitting seen',
      todo: 'Look at the inside of the wall around the fittings when the air is wettest.',
      expect: `${isDry ? 'It is dry' : 'It is wet, and nothing of that runs to a probe'}: ${marginWords(margin, isDry)}.`,
      facts: [margin],
    },
  ];
}

/** `it stays 2.5 K above the dew point at …`, or how far below it falls. */
function marginWords(margin: KnownFact, isDry: boolean): string {
  const apart = showQuantity(Math.abs(margin.value), margin.dimension);
  return isDry
    ? `its inner surface stays at least ${apart} above the dew point${cornerOf(margin)}`
    : `its inner surface falls up to ${apart} below the dew point${cornerOf(margin)}`;
}

function cornerOf({ at }: Fact): string {
  return at === undefined ? '' : ` at ${showCorner(at)}`;
}

function lengthWords(length: Located<Quantity> | undefined, words: string): string | undefined {
  return length === undefined ? undefined : `${showQuantity(length.value.value, 'length')} ${words}`;
}

function positionWords(position: NonNullable<AirTemperatureProbeMounting['position']>['value']): string {
  return position === 'upstream' || position === 'downstream' ? `${position} of` : position;
}
