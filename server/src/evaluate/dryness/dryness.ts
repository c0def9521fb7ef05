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
import type { RangeEnd } from '../air/quantity-range.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import { worstFact, worstOverPhases } from '../air/worst-fact.ts';
import type { Computed } from '../facts/declared-fact.ts';
import type { FactInput } from '../facts/fact.ts';
import type { Setting } from '../facts/site-settings.ts';
import { type SensorWarming, sensorWarming } from '../resolved/heater.ts';
import { inSampleLine } from '../resolved/mounted-stem.ts';
import { inSpace, pointFact } from '../resolved/point-fact.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';

export const humidityAtSensor = pointFact('humidity-at-sensor', {
  title: 'highest humidity at the sensor',
  dimension: 'relative-humidity',
  compute: whereWarmingIsKnown((space, warming) => humidityInAir(space, 'highest', warming)),
});

export const humidityAtUnheatedSensor = pointFact('humidity-at-sensor-unheated', {
  title: 'highest humidity at the unheated sensor',
  dimension: 'relative-humidity',
  compute: whereProbeIsInAir((_, space) => humidityInAir(space, 'highest', NOT_HEATED)),
});

/** The humidity that a sensor sees at work is what its checks should span. */
export const lowestHumidityAtSensor = pointFact('lowest-humidity-at-sensor', {
  title: 'lowest humidity at the sensor',
  dimension: 'relative-humidity',
  compute: whereWarmingIsKnown((space, warming) => humidityInAir(space, 'lowest', warming)),
});

/** The least distance of the sensor from the dew point, in K: it lies where the unheated sensor has its least. */
export const marginToDewPoint = pointFact('margin-to-dew-point', {
  title: 'least margin of the sensor to the dew point',
  dimension: 'temperature-difference',
  compute: whereWarmingIsKnown((space, { rise, input }) => {
    const worst = leastDepression(space);
    const base = { relation: 'margin = t + rise − td', formulas: OVER_WATER };
    return worstFact(base, worst === undefined ? undefined : { ...worst, value: worst.value + rise }, () => [input]);
  }),
});

/** The rise in K that keeps the sensor at or below its humidity limit everywhere in the envelope; 0 where none is needed. */
export const riseNeeded = pointFact('rise-needed', {
  title: 'rise needed to keep the sensor under its limit',
  dimension: 'temperature-difference',
  compute: whereProbeIsInAir((_, space) => riseNeededIn(space)),
});

/** The rise that a person would set where `riseNeeded` is needed. */
export const riseToSet = pointFact('rise-to-set', {
  title: 'rise to set',
  dimension: 'temperature-difference',
  compute: whereProbeIsInAir((_, space) => {
    const needed = riseNeededIn(space);
    return {
      ...needed,
      value: needed.value === undefined ? undefined : sensibleRise(needed.value),
      derivation: () => {
        const derivation = needed.derivation();
        const relation = `${derivation.relation}; then up to the next 0.5 K below 5 K, to the next 1 K from there`;
        return { ...derivation, relation };
      },
    };
  }),
});

/** The hottest air and the rise. */
export const highestHeadTemperature = pointFact('highest-head-temperature', {
  title: 'highest temperature of the head',
  dimension: 'temperature',
  compute: whereWarmingIsKnown((space, { rise, input }) => {
    const worst = hottestAir(space);
    const base = { relation: 't + rise', formulas: [] };
    return worstFact(base, worst === undefined ? undefined : { ...worst, value: worst.value + rise }, () => [input]);
  }),
});

/**
 * For points whose humidity probe is in the air of its space. A sensor in a sample line has the temperature of the
 * line, about which nothing is said here.
 */
export function whereProbeIsInAir(compute: (point: ResolvedPoint, space: SpaceEvaluation) => Computed | undefined) {
  return inSpace((point, space) => {
    const probe = point.point.humidityProbe?.value;
    return probe === undefined || inSampleLine(probe.mounting?.value) ? undefined : compute(point, space);
  });
}

/** What depends on the rise is left out while it is not known. */
function whereWarmingIsKnown(compute: (space: SpaceEvaluation, warming: SensorWarming) => Computed) {
  return whereProbeIsInAir(({ heater }, space) => {
    const warming = sensorWarming(heater);
    return warming === undefined ? undefined : compute(space, warming);
  });
}

const OVER_WATER = [SATURATION_OVER_WATER, ENHANCEMENT_OVER_WATER];
const NOT_HEATED: SensorWarming = { rise: 0, input: { label: 'heater', text: 'taken as off' } };

/** The highest humidity, from 0 to 1, that a sensor so many kelvin above the air sees in a space. */
export function highestHumidityWith(space: SpaceEvaluation, rise: number): number | undefined {
  return worstHumidity(space, 'highest', rise)?.value;
}

function humidityInAir(space: SpaceEvaluation, end: RangeEnd, { rise, input }: SensorWarming): Computed {
  const base = { relation: HUMIDITY_RELATIONS[end], formulas: OVER_WATER };
  return worstFact(base, worstHumidity(space, end, rise), () => [input]);
}

const HUMIDITY_RELATIONS: Readonly<Record<RangeEnd, string>> = {
  highest: 'RHs = e / (f(ts, p) · ew(ts)), ts = t + rise; the vapour pressure e stays the same when the head is heated',
  lowest: 'RHs = e / (f(ts, p) · ew(ts)), ts = t + rise',
};

function worstHumidity(space: SpaceEvaluation, end: RangeEnd, rise: number) {
  return worstOverPhases(space.phases, end, (state) => relativeHumidityAt(state, state.airCelsius + rise));
}

const leastDepression = remembered((space: SpaceEvaluation) =>
  worstOverPhases(space.phases, 'lowest', (state) => valueIfOk(dewPointDepression(state))),
);

const riseNeededIn = remembered((space: SpaceEvaluation): Computed => {
  const { sensorHumidityLimit } = space.settings;
  const worst = worstOverPhases(space.phases, 'highest', (state) => riseAt(state, sensorHumidityLimit.value));
  const base = { relation: 'f(ts, p) · ew(ts) = e / limit, solved for ts; rise = ts − t', formulas: OVER_WATER };
  const computed = worstFact(base, worst, () => [limitInput('sensor humidity limit', sensorHumidityLimit)]);
  return computed.value === undefined ? computed : { ...computed, value: Math.max(0, computed.value) };
});

function riseAt({ airCelsius, pressure, vapourPressure }: AirState, limit: number): number | undefined {
  const sensor = valueIfOk(dewPointOfVapour(vapourPressure / limit, pressure));
  return sensor === undefined ? undefined : sensor - airCelsius;
}

const hottestAir = remembered((space: SpaceEvaluation) =>
  worstOverPhases(space.phases, 'highest', (state) => state.airCelsius),
);

function limitInput(label: string, { value, origin }: Setting): FactInput {
  const text = showQuantity(value, 'relative-humidity');
  return origin === undefined ? { label, text: `${text} (built-in)` } : { label, text, origin };
}
