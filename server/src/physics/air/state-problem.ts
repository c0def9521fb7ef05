/** Why a state of moist air cannot be: every kind carries the numbers that a sentence about it needs. */
import type { OutsideFormula } from '../formula.ts';
import type { HumidityQuantity } from './moist-air.ts';

export type StateProblem =
  | OutsideFormula
  | NotANumber
  | NegativeAmount
  | PressureNotPositive
  | VapourPressureAbovePressure
  | PointAboveAirTemperature
  | Supersaturated
  | NoIce
  | NoAirTemperature;

export interface NotANumber {
  readonly kind: 'not-a-number';
  readonly argument: string;
}

/** An amount that cannot be negative is, or would have to be for the humidity given. */
export interface NegativeAmount {
  readonly kind: 'negative-amount';
  readonly quantity: HumidityQuantity;
  readonly value: number;
}

export interface PressureNotPositive {
  readonly kind: 'pressure-not-positive';
  readonly pressure: number;
}

/** The vapour would fill the total pressure or more: for instance 100 %RH above the boiling point. Pa. */
export interface VapourPressureAbovePressure {
  readonly kind: 'vapour-pressure-above-pressure';
  readonly vapourPressure: number;
  readonly pressure: number;
}

/** A dew point, frost point or wet bulb that would need air above saturation at the air temperature. °C. */
export interface PointAboveAirTemperature {
  readonly kind: 'dew-point-above-air-temperature' | 'frost-point-above-saturation' | 'wet-bulb-above-air-temperature';
  readonly celsius: number;
  readonly airCelsius: number;
  readonly relativeHumidity: number;
}

/** Relative humidity over water (fraction) above 1 by more than the tolerance that state.ts gives. */
export interface Supersaturated {
  readonly kind: 'supersaturated';
  readonly quantity: HumidityQuantity;
  readonly relativeHumidity: number;
  readonly airCelsius: number;
}

/** A frost point or a relative humidity over ice at a temperature in °C above the triple point. */
export interface NoIce {
  readonly kind: 'no-ice-above-triple-point';
  readonly quantity: HumidityQuantity;
  readonly celsius: number;
}

/** Air of 0 %RH has no dew point, so that the two together determine no air temperature. */
export interface NoAirTemperature {
  readonly kind: 'no-air-temperature-at-zero-humidity';
}
