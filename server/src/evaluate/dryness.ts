/** Does the sensor stay dry: the humidity it sees, its distance from the dew point, the rise it needs. */
import { valueIfOk } from '../base/outcome.ts';
import { dewPointOfVapour } from '../physics/dew-point.ts';
import { ENHANCEMENT_OVER_WATER } from '../physics/enhancement.ts';
import type { AirState } from '../physics/moist-air.ts';
import { dewPoint, relativeHumidityAt } from '../physics/quantities.ts';
import { SATURATION_OVER_WATER } from '../physics/saturation.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import { cornerOf } from './corner.ts';
import type { Fact, FactInput } from './fact.ts';
import type { HeaterUse } from './heater.ts';
import type { ResolvedPoint } from './point.ts';
import type { Setting, SiteSettings } from './site-settings.ts';
import {
  envelopeInputs,
  notesOf,
  type SpaceEvaluation,
  sampledPhases,
  type WorstState,
  worstOverPhases,
} from './space.ts';

const OVER_WATER = [SATURATION_OVER_WATER, ENHANCEMENT_OVER_WATER];

/** The facts of a point that has a humidity probe. What depends on the rise is left out while it is not given. */
export function drynessFacts({ point, heater, settings }: ResolvedPoint, space: SpaceEvaluation): readonly Fact[] {
  if (point.humidityProbe === undefined) return [];
  const warming = sensorWarming(heater);
  const coldStart = coldStartMargin(space);
  return [
    humidityAtUnheatedSensor(space),
    riseNeeded(space, settings),
    ...(warming === undefined
      ? []
      : [humidityAtSensor(space, warming), marginToDewPoint(space, warming), highestHeadTemperature(space, warming)]),
    ...(coldStart === undefined ? [] : [coldStart]),
  ];
}

/** What the sensor is warmer than the air by, and where that is written. */
export interface SensorWarming {
  readonly rise: number;
  readonly input: FactInput;
}

export function sensorWarming(heater: HeaterUse): SensorWarming | undefined {
  if (!heater.on) {
    const origin = heater.located?.origin;
    const input = { label: 'heater', text: 'off', ...(origin === undefined ? {} : { origin }) };
    return { rise: 0, input };
  }
  if (heater.rise === undefined) return undefined;
  const { value, origin } = heater.rise;
  return {
    rise: value.value,
    input: { label: 'heater rise', text: showQuantity(value.value, 'temperature-difference'), origin },
  };
}

const NOT_HEATED: SensorWarming = { rise: 0, input: { label: 'heater', text: 'taken as off' } };

/** The highest humidity that the unheated sensor sees. */
function humidityAtUnheatedSensor(space: SpaceEvaluation): Fact {
  return humidityFact('humidity-at-sensor-unheated', 'highest humidity at the unheated sensor', space, NOT_HEATED);
}

/** The highest humidity that the sensor sees, heated as the file says. */
function humidityAtSensor(space: SpaceEvaluation, warming: SensorWarming): Fact {
  return humidityFact('humidity-at-sensor', 'highest humidity at the sensor', space, warming);
}

function humidityFact(id: string, title: string, space: SpaceEvaluation, warming: SensorWarming): Fact {
  const worst = worstOverPhases(space, 'highest', (state) =>
    relativeHumidityAt(state, state.airCelsius + warming.rise),
  );
  return factOf(space, worst, warming, {
    id,
    title,
    dimension: 'relative-humidity',
    relation:
      'RHs = e / (f(ts, p) · ew(ts)), ts = t + rise; the vapour pressure e stays the same when the head is heated',
    formulas: OVER_WATER,
  });
}

/** The least distance of the sensor from the dew point, in K. */
function marginToDewPoint(space: SpaceEvaluation, warming: SensorWarming): Fact {
  const worst = worstOverPhases(space, 'lowest', (state) => {
    const point = valueIfOk(dewPoint(state));
    return point === undefined ? undefined : state.airCelsius + warming.rise - point;
  });
  return factOf(space, worst, warming, {
    id: 'margin-to-dew-point',
    title: 'least margin of the sensor to the dew point',
    dimension: 'temperature-difference',
    relation: 'margin = t + rise − td',
    formulas: OVER_WATER,
  });
}

/** The rise in K that keeps the sensor at or below its humidity limit everywhere in the envelope; 0 where none is needed. */
function riseNeeded(space: SpaceEvaluation, { sensorHumidityLimit }: SiteSettings): Fact {
  const worst = worstOverPhases(space, 'highest', (state) => riseAt(state, sensorHumidityLimit.value));
  const limit = limitInput('sensor humidity limit', sensorHumidityLimit);
  const fact = factOf(
    space,
    worst,
    { rise: 0, input: limit },
    {
      id: 'rise-needed',
      title: 'rise needed to keep the sensor under its limit',
      dimension: 'temperature-difference',
      relation: 'f(ts, p) · ew(ts) = e / limit, solved for ts; rise = ts − t',
      formulas: OVER_WATER,
    },
  );
  return fact.value === undefined ? fact : { ...fact, value: Math.max(0, fact.value) };
}

function riseAt(state: AirState, limit: number): number | undefined {
  const sensor = valueIfOk(dewPointOfVapour(state.vapourPressure / limit, state.pressure));
  return sensor === undefined ? undefined : sensor - state.airCelsius;
}

/** The highest temperature of the head: the hottest air and the rise. */
function highestHeadTemperature(space: SpaceEvaluation, warming: SensorWarming): Fact {
  const worst = worstOverPhases(space, 'highest', (state) => state.airCelsius + warming.rise);
  return factOf(space, worst, warming, {
    id: 'highest-head-temperature',
    title: 'highest temperature of the head',
    dimension: 'temperature',
    relation: 't + rise',
    formulas: [],
  });
}

/**
 * The least margin of the cold head to the dew point as it enters a phase: the head has the lowest air temperature of
 * the phase before, or of the surroundings before the first. Undefined for a space without phases.
 */
function coldStartMargin(space: SpaceEvaluation): Fact | undefined {
  const { surroundings } = space.settings;
  let before: FactInput | undefined;
  let headCelsius: number | undefined;
  if (surroundings !== undefined) {
    headCelsius = surroundings.value.low;
    before = {
      label: 'head before the phase, from the surroundings',
      text: showQuantity(headCelsius, 'temperature'),
      origin: surroundings.origin,
    };
  }
  let worst: Fact | undefined;
  for (const { phase, sampled } of sampledPhases(space)) {
    const { envelope } = phase;
    if (envelope.phase === undefined) return undefined;
    if (headCelsius !== undefined && before !== undefined) {
      const fact = entryFact(space, phase.envelope.phase ?? '', headCelsius, before);
      if (fact?.value !== undefined && (worst?.value === undefined || fact.value < worst.value)) worst = fact;
    }
    headCelsius = sampled.envelope.temperature.value.low;
    before = {
      label: `head before the phase, from ${envelope.phase}`,
      text: showQuantity(headCelsius, 'temperature'),
      origin: envelope.temperature.origin,
    };
  }
  return worst;
}

function entryFact(space: SpaceEvaluation, phase: string, headCelsius: number, before: FactInput): Fact | undefined {
  const own = space.phases.filter(({ envelope }) => envelope.phase === phase);
  const wettest = worstOverPhases({ ...space, phases: own }, 'highest', (state) => valueIfOk(dewPoint(state)));
  if (wettest === undefined) return undefined;
  const fact = factOf(
    space,
    { ...wettest, value: headCelsius - wettest.value },
    { rise: 0, input: before },
    {
      id: 'cold-start-margin',
      title: 'least margin of the cold head to the dew point',
      dimension: 'temperature-difference',
      relation: 'margin = head temperature on entry − highest dew point of the phase',
      formulas: OVER_WATER,
    },
  );
  return fact;
}

function limitInput(label: string, { value, origin }: Setting): FactInput {
  const text = showQuantity(value, 'relative-humidity');
  return origin === undefined ? { label, text: `${text} (built-in)` } : { label, text, origin };
}

type FactBase = Pick<Fact, 'id' | 'title' | 'dimension' | 'formulas'> & { readonly relation: string };

function factOf(space: SpaceEvaluation, worst: WorstState | undefined, warming: SensorWarming, base: FactBase): Fact {
  if (worst === undefined) {
    return {
      ...base,
      value: undefined,
      missing: 'the envelope cannot be computed with',
      inputs: [warming.input],
      notes: [],
    };
  }
  return {
    ...base,
    value: worst.value,
    at: cornerOf(worst.state, worst.phase.envelope.phase),
    inputs: [warming.input, ...envelopeInputs(space, worst.phase)],
    notes: notesOf(worst.state),
  };
}
