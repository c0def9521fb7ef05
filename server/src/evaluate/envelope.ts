/** The envelope of a space or phase: a box in temperature, humidity and pressure, cut off at saturation. */

import { valueIfOk } from '../base/outcome.ts';
import type { Located } from '../model/located.ts';
import type { Envelope, Space } from '../model/model-types.generated.ts';
import { dewPointOfVapour } from '../physics/dew-point.ts';
import type { AirState } from '../physics/moist-air.ts';
import { saturatedVapourPressure } from '../physics/saturated-vapour.ts';
import { vapourPressureFromMixingRatio } from '../physics/vapour-pressure.ts';
import type { QuantityRange } from '../quantity/quantity.ts';
import type { Origin } from '../syntax/nodes.ts';

export type HumidityKey = 'humidity' | 'dew-point' | 'dew-point-depression' | 'mixing-ratio';

/** A range of plain numbers, canonical. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

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
}

/** The envelopes of a space whose temperature and humidity can be read, in the order of time. */
export function phaseEnvelopes(space: Space, pressure: Span): readonly PhaseEnvelope[] {
  const { air, phases } = space;
  if (phases !== undefined) return [...phases.value].flatMap(([name, located]) => readable(name, located, pressure));
  return air === undefined ? [] : readable(undefined, air, pressure);
}

function readable(phase: string | undefined, located: Located<Envelope>, pressure: Span): readonly PhaseEnvelope[] {
  const { temperature, humidity, dewPoint, dewPointDepression, mixingRatio, speed } = located.value;
  const given: readonly (readonly [HumidityKey, Located<QuantityRange> | undefined])[] = [
    ['humidity', humidity],
    ['dew-point', dewPoint],
    ['dew-point-depression', dewPointDepression],
    ['mixing-ratio', mixingRatio],
  ];
  const [chosen, second] = given.flatMap(([key, range]) => (range === undefined ? [] : [{ key, range }]));
  if (temperature === undefined || chosen === undefined || second !== undefined) return [];
  const keyOrigin = located.keyOrigin ?? located.origin;
  return [{ phase, keyOrigin, located, temperature, humidityKey: chosen.key, humidity: chosen.range, pressure, speed }];
}

/**
 * The state of the envelope at a temperature in °C, a humidity in the envelope's own measure, and a pressure in Pa,
 * brought back to saturation where it lies beyond.
 */
export function stateAt(envelope: PhaseEnvelope, celsius: number, humidity: number, pressure: number): AirState {
  const saturated = Math.min(saturatedVapourPressure(celsius, pressure, 'water'), pressure);
  const vapourPressure = Math.min(saturated, vapourPressureOf(envelope.humidityKey, celsius, humidity, pressure));
  return { airCelsius: celsius, pressure, vapourPressure };
}

function vapourPressureOf(key: HumidityKey, celsius: number, humidity: number, pressure: number): number {
  switch (key) {
    case 'humidity':
      return Math.max(0, humidity) * saturatedVapourPressure(celsius, pressure, 'water');
    case 'dew-point':
      return saturatedVapourPressure(Math.min(humidity, celsius), pressure, 'water');
    case 'dew-point-depression':
      return saturatedVapourPressure(celsius - Math.max(0, humidity), pressure, 'water');
    case 'mixing-ratio':
      return vapourPressureFromMixingRatio(Math.max(0, humidity), pressure);
  }
}

/** Why a box of temperature and humidity cannot exist as written. */
export type Impossibility =
  | { readonly kind: 'humidity-over-saturation'; readonly relativeHumidity: number }
  | { readonly kind: 'dew-point-over-temperature'; readonly dewPointCelsius: number; readonly airCelsius: number }
  | { readonly kind: 'negative-depression'; readonly depression: number }
  | {
      readonly kind: 'vapour-over-pressure';
      readonly vapourPressure: number;
      readonly airCelsius: number;
      readonly pressure: number;
    };

export function impossibilityOf(envelope: PhaseEnvelope): Impossibility | undefined {
  const { humidityKey, temperature, humidity, pressure } = envelope;
  const highest = humidity.value.high;
  const hottest = temperature.value.high;
  switch (humidityKey) {
    case 'humidity': {
      if (highest > 1) return { kind: 'humidity-over-saturation', relativeHumidity: highest };
      const vapourPressure = highest * saturatedVapourPressure(hottest, pressure.low, 'water');
      if (vapourPressure <= pressure.low) return undefined;
      return { kind: 'vapour-over-pressure', vapourPressure, airCelsius: hottest, pressure: pressure.low };
    }
    case 'dew-point-depression':
      return humidity.value.low < 0 ? { kind: 'negative-depression', depression: humidity.value.low } : undefined;
    case 'dew-point':
    case 'mixing-ratio': {
      const dewPointCelsius = highestDewPoint(envelope);
      if (dewPointCelsius === undefined || dewPointCelsius <= hottest) return undefined;
      return { kind: 'dew-point-over-temperature', dewPointCelsius, airCelsius: hottest };
    }
  }
}

/** Where the box reaches over saturation and is cut there: its highest dew point lies above its lowest temperature. */
export function saturationCut(
  envelope: PhaseEnvelope,
): { readonly dewPointCelsius: number; readonly airCelsius: number } | undefined {
  if (envelope.humidityKey === 'humidity' || envelope.humidityKey === 'dew-point-depression') return undefined;
  const airCelsius = envelope.temperature.value.low;
  const dewPointCelsius = highestDewPoint(envelope);
  return dewPointCelsius === undefined || dewPointCelsius <= airCelsius ? undefined : { dewPointCelsius, airCelsius };
}

function highestDewPoint(envelope: PhaseEnvelope): number | undefined {
  const highest = envelope.humidity.value.high;
  if (envelope.humidityKey === 'dew-point') return highest;
  const { high } = envelope.pressure;
  return valueIfOk(dewPointOfVapour(vapourPressureFromMixingRatio(highest, high), high));
}
