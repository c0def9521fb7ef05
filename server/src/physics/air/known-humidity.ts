/** From one known humidity to the vapour pressure of the air, with the ranges of each quantity checked. */
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import { TRIPLE_POINT_CELSIUS } from '../constants.ts';
import { checkValidity } from '../formula.ts';
import type { HumidityQuantity } from './moist-air.ts';
import { saturatedVapourPressure } from './saturated-vapour.ts';
import { SATURATION_OVER_ICE, saturationFormulaOverWater } from './saturation.ts';
import type { NoIce, StateProblem } from './state-problem.ts';
import {
  mixingRatioFromSpecificEnthalpy,
  vapourPressureFromAbsoluteHumidity,
  vapourPressureFromDewPoint,
  vapourPressureFromFrostPoint,
  vapourPressureFromMixingRatio,
  vapourPressureFromRelativeHumidity,
  vapourPressureFromRelativeHumidityOverIce,
  vapourPressureFromSpecificHumidity,
  vapourPressureFromVolumeFraction,
} from './vapour-pressure.ts';
import { mixingRatioFromWetBulb, wetBulbPhase } from './wet-bulb.ts';

/** One humidity quantity and its value in SI units: fractions, °C, Pa, kg/kg, kg/m³, J/kg; differences in K. */
export interface KnownHumidity {
  readonly quantity: HumidityQuantity;
  readonly value: number;
}

/**
 * Vapour pressure in Pa of air at a temperature in °C and a pressure in Pa, from one known humidity. Checks that the
 * humidity is inside its formulas and no negative amount; whether such air is possible is for `airState` to say.
 */
export function vapourPressureOf(
  { quantity, value }: KnownHumidity,
  airCelsius: number,
  pressure: number,
): Outcome<number, StateProblem> {
  switch (quantity) {
    case 'relative-humidity':
      return amount(quantity, value, vapourPressureFromRelativeHumidity(value, airCelsius, pressure));
    case 'relative-humidity-ice':
      if (airCelsius > TRIPLE_POINT_CELSIUS) return fail(noIce(quantity, airCelsius));
      return amount(quantity, value, vapourPressureFromRelativeHumidityOverIce(value, airCelsius, pressure));
    case 'dew-point':
      return fromDewPoint(value, pressure);
    case 'dew-point-depression':
      return fromDewPoint(airCelsius - value, pressure);
    case 'frost-point':
      return fromFrostPoint(value, pressure);
    case 'vapour-pressure':
      return amount(quantity, value, value);
    case 'vapour-pressure-deficit': {
      const vapourPressure = saturatedVapourPressure(airCelsius, pressure, 'water') - value;
      return amount('vapour-pressure', vapourPressure, vapourPressure);
    }
    case 'mixing-ratio':
      return fromMixingRatio(value, pressure);
    case 'specific-enthalpy':
      return fromMixingRatio(mixingRatioFromSpecificEnthalpy(value, airCelsius), pressure);
    case 'wet-bulb':
      return fromWetBulb(value, airCelsius, pressure);
    case 'specific-humidity':
      return amount(quantity, value, vapourPressureFromSpecificHumidity(value, pressure));
    case 'volume-fraction':
      return amount(quantity, value, vapourPressureFromVolumeFraction(value, pressure));
    case 'absolute-humidity':
      return amount(quantity, value, vapourPressureFromAbsoluteHumidity(value, airCelsius));
  }
}

function amount(quantity: HumidityQuantity, value: number, vapourPressure: number): Outcome<number, StateProblem> {
  return value < 0 ? fail({ kind: 'negative-amount', quantity, value }) : succeed(vapourPressure);
}

function fromMixingRatio(mixingRatio: number, pressure: number): Outcome<number, StateProblem> {
  return amount('mixing-ratio', mixingRatio, vapourPressureFromMixingRatio(mixingRatio, pressure));
}

function fromDewPoint(dewPointCelsius: number, pressure: number): Outcome<number, StateProblem> {
  const outside = checkValidity(saturationFormulaOverWater(dewPointCelsius), { celsius: dewPointCelsius });
  return outside === undefined ? succeed(vapourPressureFromDewPoint(dewPointCelsius, pressure)) : fail(outside);
}

function fromFrostPoint(frostPointCelsius: number, pressure: number): Outcome<number, StateProblem> {
  if (frostPointCelsius > TRIPLE_POINT_CELSIUS) return fail(noIce('frost-point', frostPointCelsius));
  const outside = checkValidity(SATURATION_OVER_ICE, { celsius: frostPointCelsius });
  return outside === undefined ? succeed(vapourPressureFromFrostPoint(frostPointCelsius, pressure)) : fail(outside);
}

function fromWetBulb(wetBulbCelsius: number, airCelsius: number, pressure: number): Outcome<number, StateProblem> {
  const outside = checkValidity(saturationFormulaOverWater(wetBulbCelsius), { celsius: wetBulbCelsius });
  if (outside !== undefined) return fail(outside);
  const phase = wetBulbPhase(wetBulbCelsius);
  const saturated = saturatedVapourPressure(wetBulbCelsius, pressure, phase);
  if (saturated >= pressure) {
    return fail({ kind: 'vapour-pressure-above-pressure', vapourPressure: saturated, pressure });
  }
  return fromMixingRatio(mixingRatioFromWetBulb({ celsius: wetBulbCelsius, phase }, airCelsius, pressure), pressure);
}

function noIce(quantity: HumidityQuantity, celsius: number): NoIce {
  return { kind: 'no-ice-above-triple-point', quantity, celsius };
}
