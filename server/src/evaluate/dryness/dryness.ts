/** Does the sensor stay dry: the humidity it sees, its distance from the dew point, the rise it needs. */
import { valueIfOk } from '../../base/outcome.ts';
import { remembered } from '../../base/remembered.ts';
import { dewPointOfVapour } from '../../physics/air/dew-point.ts';
import { ENHANCEMENT_OVER_WATER } from '../../physics/air/enhancement.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { dewPointDepression, relativeHumidityAt } from '../../physics/air/quantities.ts';
import { SATURATION_OVER_WATER } from '../../physics/air/saturation.ts';
import { sensibleRise } from '../../physics/mathematics/sensible-steps.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { worstFact, worstOverPhases } from '../air/worst-fact.ts';
import { type Fact, type FactInput, isKnown } from '../facts/fact.ts';
import type { Setting, SiteSettings } from '../facts/site-settings.ts';
import type { ResolvedPoint } from '../point.ts';
import type { HeaterUse } from '../resolved/heater.ts';
import type { SpaceEvaluation } from '../space.ts';
import { coldStartFacts } from './cold-start.ts';

const OVER_WATER = [SATURATION_OVER_WATER, ENHANCEMENT_OVER_WATER];

/**
 * The facts of a point whose humidity probe is in the air of its space. What depends on the rise is left out while it
 * is not known. A sensor in a sample line has the temperature of the line, about which nothing is said here.
 */
export function drynessFacts({ point, heater }: ResolvedPoint, space: SpaceEvaluation): readonly Fact[] {
  const probe = point.humidityProbe?.value;
  if (probe === undefined || probe.mounting?.value.path?.value === 'sample-line') return [];
  const warming = sensorWarming(heater);
  return [
    ...factsOfUnheatedSensor(space),
    ...riseFactsOf(space),
    ...(warming === undefined
      ? []
      : [
          highestHumidityAtSensor(space, warming),
          marginToDewPoint(space, warming),
          highestHeadTemperature(space, warming),
        ]),
  ];
}

export function highestHumidityAtSensor(space: SpaceEvaluation, warming: SensorWarming): Fact {
  return humidityAtSensor('humidity-at-sensor', 'highest humidity at the sensor', space, warming);
}

/** What holds for any unheated sensor in a space. */
const factsOfUnheatedSensor = remembered((space: SpaceEvaluation): readonly Fact[] => [
  humidityAtSensor('humidity-at-sensor-unheated', 'highest humidity at the unheated sensor', space, NOT_HEATED),
  ...coldStartFacts(space),
]);

/** The rise that a space asks for under the limits of its site. */
const riseFactsOf = remembered((space: SpaceEvaluation): readonly Fact[] => {
  const needed = riseNeeded(space, space.settings);
  return [needed, riseToSet(needed)];
});

/** What the sensor is warmer than the air by, in K, and where that is written. */
export interface SensorWarming {
  readonly rise: number;
  readonly input: FactInput;
}

/** @returns undefined where the heater cannot be read, or is on and nothing says how far it heats */
export function sensorWarming({ known, on, located, rise }: HeaterUse): SensorWarming | undefined {
  if (!known) return undefined;
  if (!on) {
    const origin = located?.origin;
    return { rise: 0, input: { label: 'heater', text: 'off', ...(origin === undefined ? {} : { origin }) } };
  }
  if (rise === undefined) return undefined;
  const { value, origin } = rise;
  const text = showQuantity(value.value, 'temperature-difference');
  return { rise: value.value, input: { label: 'heater rise', text, origin } };
}

const NOT_HEATED: SensorWarming = { rise: 0, input: { label: 'heater', text: 'taken as off' } };

function humidityAtSensor(id: string, title: string, space: SpaceEvaluation, { rise, input }: SensorWarming): Fact {
  const worst = worstOverPhases(space.phases, 'highest', (state) => relativeHumidityAt(state, state.airCelsius + rise));
  const relation =
    'RHs = e / (f(ts, p) · ew(ts)), ts = t + rise; the vapour pressure e stays the same when the head is heated';
  return worstFact({ id, title, dimension: 'relative-humidity', relation, formulas: OVER_WATER }, worst, [input]);
}

/** The least distance of the sensor from the dew point, in K: it lies where the unheated sensor has its least. */
function marginToDewPoint(space: SpaceEvaluation, { rise, input }: SensorWarming): Fact {
  const worst = leastDepression(space);
  const base = {
    id: 'margin-to-dew-point',
    title: 'least margin of the sensor to the dew point',
    dimension: 'temperature-difference',
    relation: 'margin = t + rise − td',
    formulas: OVER_WATER,
  } as const;
  return worstFact(base, worst === undefined ? undefined : { ...worst, value: worst.value + rise }, [input]);
}

const leastDepression = remembered((space: SpaceEvaluation) =>
  worstOverPhases(space.phases, 'lowest', (state) => valueIfOk(dewPointDepression(state))),
);

/** The rise in K that keeps the sensor at or below its humidity limit everywhere in the envelope; 0 where none is needed. */
function riseNeeded(space: SpaceEvaluation, { sensorHumidityLimit }: SiteSettings): Fact {
  const worst = worstOverPhases(space.phases, 'highest', (state) => riseAt(state, sensorHumidityLimit.value));
  const base = {
    id: 'rise-needed',
    title: 'rise needed to keep the sensor under its limit',
    dimension: 'temperature-difference',
    relation: 'f(ts, p) · ew(ts) = e / limit, solved for ts; rise = ts − t',
    formulas: OVER_WATER,
  } as const;
  const fact = worstFact(base, worst, [limitInput('sensor humidity limit', sensorHumidityLimit)]);
  return isKnown(fact) ? { ...fact, value: Math.max(0, fact.value) } : fact;
}

function riseAt({ airCelsius, pressure, vapourPressure }: AirState, limit: number): number | undefined {
  const sensor = valueIfOk(dewPointOfVapour(vapourPressure / limit, pressure));
  return sensor === undefined ? undefined : sensor - airCelsius;
}

/** The rise that a person would set where `needed` is needed. */
function riseToSet(needed: Fact): Fact {
  return {
    ...needed,
    id: 'rise-to-set',
    title: 'rise to set',
    value: needed.value === undefined ? undefined : sensibleRise(needed.value),
    relation: `${needed.relation}; then up to the next 0.5 K below 5 K, to the next 1 K from there`,
  };
}

/** The highest temperature of the head: the hottest air and the rise. */
function highestHeadTemperature(space: SpaceEvaluation, { rise, input }: SensorWarming): Fact {
  const worst = hottestAir(space);
  const base = {
    id: 'highest-head-temperature',
    title: 'highest temperature of the head',
    dimension: 'temperature',
    relation: 't + rise',
    formulas: [],
  } as const;
  return worstFact(base, worst === undefined ? undefined : { ...worst, value: worst.value + rise }, [input]);
}

const hottestAir = remembered((space: SpaceEvaluation) =>
  worstOverPhases(space.phases, 'highest', (state) => state.airCelsius),
);

function limitInput(label: string, { value, origin }: Setting): FactInput {
  const text = showQuantity(value, 'relative-humidity');
  return origin === undefined ? { label, text: `${text} (built-in)` } : { label, text, origin };
}
