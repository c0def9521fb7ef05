/** The envelope of a space or phase: a box in temperature, humidity and pressure, cut off at saturation. */
import { valueIfOk } from '../../base/outcome.ts';
import type { Span } from '../../base/span.ts';
import type { Located } from '../../model/located.ts';
import type { Envelope, Space } from '../../model/model-types.generated.ts';
import { dewPointOfVapour } from '../../physics/air/dew-point.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { mixingRatio } from '../../physics/air/quantities.ts';
import { saturatedVapourPressure } from '../../physics/air/saturated-vapour.ts';
import { vapourPressureFromMixingRatio } from '../../physics/air/vapour-pressure.ts';
import { quantityInfo } from '../../quantity/quantities.ts';
import type { QuantityRange } from '../../quantity/quantity.ts';
import type { Origin } from '../../syntax/nodes.ts';
import type { FactInput } from '../facts/fact.ts';
import { rangeInput } from '../facts/inputs.ts';
import type { SpacePressure } from './space-pressure.ts';

export type HumidityKey = 'humidity' | 'dew-point' | 'dew-point-depression' | 'mixing-ratio';

export interface PhaseEnvelope {
  /** The phase's name; absent for the one envelope `air`. */
  readonly phase: string | undefined;
  readonly keyOrigin: Origin;
  readonly located: Located<Envelope>;
  readonly temperature: Located<QuantityRange>;
  readonly humidityKey: HumidityKey;
  readonly humidity: Located<QuantityRange>;
  readonly pressure: Span;
  readonly speed: Located<QuantityRange> | undefined;
  /** What every fact of the envelope is computed from. */
  readonly inputs: readonly FactInput[];
}

/** The envelopes of a space whose temperature and humidity can be read, in the order of time. */
export function phaseEnvelopes(space: Space, pressure: SpacePressure): readonly PhaseEnvelope[] {
  const { air, phases } = space;
  if (phases !== undefined) return [...phases.value].flatMap(([name, located]) => readable(name, located, pressure));
  return air === undefined ? [] : readable(undefined, air, pressure);
}

function readable(
  phase: string | undefined,
  located: Located<Envelope>,
  pressure: SpacePressure,
): readonly PhaseEnvelope[] {
  const { temperature, humidity, dewPoint, dewPointDepression, mixingRatio, speed } = located.value;
  const given: readonly (readonly [HumidityKey, Located<QuantityRange> | undefined])[] = [
    ['humidity', humidity],
    ['dew-point', dewPoint],
    ['dew-point-depression', dewPointDepression],
    ['mixing-ratio', mixingRatio],
  ];
  const [chosen, second] = given.flatMap(([key, range]) => (range === undefined ? [] : [{ key, range }]));
  if (temperature === undefined || chosen === undefined || second !== undefined) return [];
  const { key, range } = chosen;
  const label = key === 'humidity' ? 'relative humidity' : quantityInfo(key).title;
  const inputs = [rangeInput('air temperature', temperature), rangeInput(label, range), pressure.input];
  const keyOrigin = located.keyOrigin ?? located.origin;
  return [{ phase, keyOrigin, located, temperature, humidityKey: key, humidity: range, pressure, speed, inputs }];
}

/**
 * The state of the envelope at a temperature in °C, a pressure in Pa, and a share of the humidity range from 0 to 1.
 * The share runs over that part of the range that air of this temperature can hold, so that 1 is saturation wherever
 * the box reaches beyond it.
 */
export function stateAt(envelope: PhaseEnvelope, celsius: number, share: number, pressure: number): AirState {
  const { humidityKey } = envelope;
  const { low, high } = envelope.humidity.value;
  const most = saturatedHumidity(humidityKey, celsius, pressure);
  const from = Math.min(low, most);
  const humidity = from + (Math.min(high, most) - from) * share;
  const vapourPressure = vapourPressureOf(humidityKey, celsius, humidity, pressure);
  return { airCelsius: celsius, pressure, vapourPressure: Math.min(vapourPressure, pressure) };
}

/** The most that a humidity of this measure can be; a depression is bounded at its low end instead. */
function saturatedHumidity(key: HumidityKey, celsius: number, pressure: number): number {
  switch (key) {
    case 'humidity':
      return 1;
    case 'dew-point':
      return celsius;
    case 'dew-point-depression':
      return Number.POSITIVE_INFINITY;
    case 'mixing-ratio': {
      const vapourPressure = saturatedVapourPressure(celsius, pressure, 'water');
      if (vapourPressure >= pressure) return Number.POSITIVE_INFINITY;
      return mixingRatio({ airCelsius: celsius, pressure, vapourPressure });
    }
  }
}

export function vapourPressureOf(key: HumidityKey, celsius: number, humidity: number, pressure: number): number {
  switch (key) {
    case 'humidity':
      return humidity * saturatedVapourPressure(celsius, pressure, 'water');
    case 'dew-point':
      return saturatedVapourPressure(humidity, pressure, 'water');
    case 'dew-point-depression':
      return saturatedVapourPressure(celsius - humidity, pressure, 'water');
    case 'mixing-ratio':
      return vapourPressureFromMixingRatio(humidity, pressure);
  }
}

/**
 * The temperatures in °C inside the box at which its driest and wettest air are just saturated: where the cut at
 * saturation gives the box new corners.
 */
export function cutTemperatures(envelope: PhaseEnvelope, pressure: number): readonly number[] {
  const { low, high } = envelope.temperature.value;
  const ends = [envelope.humidity.value.low, envelope.humidity.value.high];
  const points = ends.map((humidity) => dewPointOfRange(envelope.humidityKey, humidity, pressure));
  return points.filter((celsius) => celsius !== undefined).filter((celsius) => celsius > low && celsius < high);
}

/** The dew point in °C of a humidity that does not depend on the air temperature, or undefined. */
export function dewPointOfRange(key: HumidityKey, humidity: number, pressure: number): number | undefined {
  if (key === 'dew-point') return humidity;
  if (key !== 'mixing-ratio') return undefined;
  return valueIfOk(dewPointOfVapour(vapourPressureFromMixingRatio(humidity, pressure), pressure));
}
