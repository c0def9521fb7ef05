/** Where a box of temperature and humidity leaves what air can be: over saturation, or over the pressure. */
import { valueIfOk } from '../../base/outcome.ts';
import type { Span } from '../../base/span.ts';
import { dewPointOfVapour } from '../../physics/air/dew-point.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { mixingRatio } from '../../physics/air/quantities.ts';
import { saturatedVapourPressure } from '../../physics/air/saturated-vapour.ts';
import { roundDownToStep, roundUpToStep } from '../../physics/mathematics/sensible-steps.ts';
import type { Dimension } from '../../quantity/dimension.ts';
import { cornerOf } from '../facts/corner.ts';
import type { Corner } from '../facts/fact.ts';
import { dewPointOfRange, type PhaseEnvelope, vapourPressureOf } from './envelope.ts';

/** The numbers that a box is told by, each with its title and dimension. */
export const BOX_FACTS = {
  'highest-humidity': { title: 'highest relative humidity of the envelope', dimension: 'relative-humidity' },
  'humidity-limit': { title: 'relative humidity of saturated air', dimension: 'relative-humidity' },
  'lowest-depression': { title: 'lowest dew-point depression of the envelope', dimension: 'temperature-difference' },
  'depression-limit': { title: 'dew-point depression of saturated air', dimension: 'temperature-difference' },
  'highest-dew-point': { title: 'highest dew point of the envelope', dimension: 'temperature' },
  'highest-temperature': { title: 'highest air temperature of the envelope', dimension: 'temperature' },
  'lowest-temperature': { title: 'lowest air temperature of the envelope', dimension: 'temperature' },
  'highest-vapour-pressure': { title: 'highest vapour pressure of the envelope', dimension: 'pressure' },
  'lowest-pressure': { title: 'lowest pressure of the space', dimension: 'pressure' },
} as const satisfies Record<string, { readonly title: string; readonly dimension: Dimension }>;

export type BoxFactName = keyof typeof BOX_FACTS;

export interface BoxValue {
  readonly fact: BoxFactName;
  /** Canonical. */
  readonly value: number;
  readonly at: Corner;
}

/** Why the wettest corner of a box cannot exist. */
export interface Impossibility {
  readonly kind:
    | 'humidity-over-saturation'
    | 'dew-point-over-temperature'
    | 'negative-depression'
    | 'vapour-over-pressure';
  /** What is too much, or a depression too little. */
  readonly found: BoxValue;
  /** What it may be at most, or at least. */
  readonly limit: BoxValue;
  /** The part of the humidity range that is possible; absent where none is. */
  readonly clipped: Span | undefined;
}

/** A box that reaches over saturation and is cut there. */
export interface SaturationCut {
  readonly highestDewPoint: BoxValue;
  readonly lowestTemperature: BoxValue;
  /** The depression in K with which temperature and dew point, moving together, keep both ranges. */
  readonly depression: Span | undefined;
}

/** Steps that a person would write a limit in: 1 %RH, 0.1 K, 0.1 g/kg. */
const HUMIDITY_STEP = 0.01;
const TEMPERATURE_STEP = 0.1;
const MIXING_RATIO_STEP = 1e-4;

export function impossibilityOf(envelope: PhaseEnvelope): Impossibility | undefined {
  const { humidityKey, humidity } = envelope;
  const { low, high } = humidity.value;
  const hottest = envelope.temperature.value.high;
  switch (humidityKey) {
    case 'humidity': {
      if (high <= 1) return vapourOverPressure(envelope, high);
      const fact = atCorner(envelope, hottestAir(envelope, high));
      return {
        kind: 'humidity-over-saturation',
        found: fact('highest-humidity', high),
        limit: fact('humidity-limit', 1),
        clipped: spanIfAny(low, 1),
      };
    }
    case 'dew-point-depression': {
      if (low >= 0) return vapourOverPressure(envelope, low);
      const fact = atCorner(envelope, hottestAir(envelope, low));
      return {
        kind: 'negative-depression',
        found: fact('lowest-depression', low),
        limit: fact('depression-limit', 0),
        clipped: spanIfAny(0, high),
      };
    }
    case 'dew-point':
    case 'mixing-ratio': {
      const dewPointCelsius = highestDewPoint(envelope);
      if (dewPointCelsius === undefined) return undefined;
      if (dewPointCelsius <= hottest)
        return humidityKey === 'dew-point' ? vapourOverPressure(envelope, high) : undefined;
      const pressure = envelope.pressure.high;
      const vapourPressure = saturatedVapourPressure(dewPointCelsius, pressure, 'water');
      const fact = atCorner(envelope, { airCelsius: hottest, pressure, vapourPressure });
      return {
        kind: 'dew-point-over-temperature',
        found: fact('highest-dew-point', dewPointCelsius),
        limit: fact('highest-temperature', hottest),
        clipped: spanIfAny(low, humidityKey === 'dew-point' ? hottest : saturatedMixingRatio(hottest, pressure)),
      };
    }
  }
}

/** Air whose vapour would press harder than all of it: hotter than the boiling point, and too humid for that. */
function vapourOverPressure(envelope: PhaseEnvelope, wettest: number): Impossibility | undefined {
  const corner = hottestAir(envelope, wettest);
  const { vapourPressure, pressure } = corner;
  if (vapourPressure <= pressure) return undefined;
  const fact = atCorner(envelope, corner);
  return {
    kind: 'vapour-over-pressure',
    found: fact('highest-vapour-pressure', vapourPressure),
    limit: fact('lowest-pressure', pressure),
    clipped: clippedBelowPressure(envelope, corner.airCelsius, pressure),
  };
}

function clippedBelowPressure(envelope: PhaseEnvelope, hottest: number, pressure: number): Span | undefined {
  const { low, high } = envelope.humidity.value;
  if (envelope.humidityKey === 'humidity') {
    const most = pressure / saturatedVapourPressure(hottest, pressure, 'water');
    return spanIfAny(low, roundDownToStep(most, HUMIDITY_STEP));
  }
  const boiling = valueIfOk(dewPointOfVapour(pressure, pressure));
  if (boiling === undefined) return undefined;
  if (envelope.humidityKey === 'dew-point') return spanIfAny(low, roundDownToStep(boiling, TEMPERATURE_STEP));
  return spanIfAny(roundUpToStep(hottest - boiling, TEMPERATURE_STEP), high);
}

function saturatedMixingRatio(celsius: number, pressure: number): number {
  const vapourPressure = saturatedVapourPressure(celsius, pressure, 'water');
  return roundDownToStep(mixingRatio({ airCelsius: celsius, pressure, vapourPressure }), MIXING_RATIO_STEP);
}

function spanIfAny(low: number, high: number): Span | undefined {
  return low <= high ? { low, high } : undefined;
}

/** Where the box's highest dew point lies above its lowest temperature. */
export function saturationCut(envelope: PhaseEnvelope): SaturationCut | undefined {
  const { temperature, humidityKey, humidity, pressure } = envelope;
  const coldest = temperature.value.low;
  const highest = highestDewPoint(envelope);
  if (highest === undefined || highest <= coldest) return undefined;
  const saturated = saturatedVapourPressure(coldest, pressure.high, 'water');
  const fact = atCorner(envelope, {
    airCelsius: coldest,
    pressure: pressure.high,
    vapourPressure: saturated,
  });
  const lowest = dewPointOfRange(humidityKey, humidity.value.low, pressure.low);
  return {
    highestDewPoint: fact('highest-dew-point', highest),
    lowestTemperature: fact('lowest-temperature', coldest),
    depression: lowest === undefined ? undefined : depressionKeeping(temperature.value, { low: lowest, high: highest }),
  };
}

/** The distance of the low ends and that of the high ends, as a range; none where the low ends lie the wrong way round. */
function depressionKeeping(temperature: Span, dewPoint: Span): Span | undefined {
  const [less, more] = [temperature.low - dewPoint.low, temperature.high - dewPoint.high].sort((a, b) => a - b);
  if (less === undefined || more === undefined || less < 0) return undefined;
  return { low: roundDownToStep(less, TEMPERATURE_STEP), high: roundUpToStep(more, TEMPERATURE_STEP) };
}

function highestDewPoint({ humidityKey, humidity, pressure }: PhaseEnvelope): number | undefined {
  return dewPointOfRange(humidityKey, humidity.value.high, pressure.high);
}

/** The hottest air of the box at its lowest pressure, with a humidity in the box's own measure, possible or not. */
function hottestAir({ humidityKey, temperature, pressure }: PhaseEnvelope, humidity: number): AirState {
  const airCelsius = temperature.value.high;
  const vapourPressure = vapourPressureOf(humidityKey, airCelsius, humidity, pressure.low);
  return { airCelsius, pressure: pressure.low, vapourPressure };
}

/** Makes numbers of one corner of the box. */
function atCorner({ phase }: PhaseEnvelope, corner: AirState) {
  return (fact: BoxFactName, value: number): BoxValue => ({ fact, value, at: cornerOf(corner, phase) });
}
