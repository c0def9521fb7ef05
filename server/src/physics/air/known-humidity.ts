/**
 * From one known humidity to the vapour pressure in Pa, with the ranges of its formulas checked. Whether such air is
 * possible is for `airState` to say.
 */
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import { TRIPLE_POINT_CELSIUS } from '../constants.ts';
import { checkValidity } from '../formula.ts';
import type { HumidityQuantity } from './moist-air.ts';
import { saturatedVapourPressure } from './saturated-vapour.ts';
import { SATURATION_OVER_ICE, saturationFormulaOverWater } from './saturation.ts';
import type { NoIce, StateProblem } from './state-problem.ts';
import {
  vapourPressureFromDewPoint,
  vapourPressureFromFrostPoint,
  vapourPressureFromMixingRatio,
  vapourPressureFromRelativeHumidityOverIce,
} from './vapour-pressure.ts';
import { mixingRatioFromWetBulb, wetBulbPhase } from './wet-bulb.ts';

/** What there is no less than nothing of. */
export function amount(
  quantity: HumidityQuantity,
  value: number,
  vapourPressure: number,
): Outcome<number, StateProblem> {
  return value < 0 ? fail({ kind: 'negative-amount', quantity, value }) : succeed(vapourPressure);
}

export function fromMixingRatio(mixingRatio: number, pressure: number): Outcome<number, StateProblem> {
  return amount('mixing-ratio', mixingRatio, vapourPressureFromMixingRatio(mixingRatio, pressure));
}

export function fromDewPoint(dewPointCelsius: number, pressure: number): Outcome<number, StateProblem> {
  const outside = checkValidity(saturationFormulaOverWater(dewPointCelsius), { celsius: dewPointCelsius });
  return outside === undefined ? succeed(vapourPressureFromDewPoint(dewPointCelsius, pressure)) : fail(outside);
}

export function fromFrostPoint(frostPointCelsius: number, pressure: number): Outcome<number, StateProblem> {
  if (frostPointCelsius > TRIPLE_POINT_CELSIUS) return fail(noIce('frost-point', frostPointCelsius));
  const outside = checkValidity(SATURATION_OVER_ICE, { celsius: frostPointCelsius });
  return outside === undefined ? succeed(vapourPressureFromFrostPoint(frostPointCelsius, pressure)) : fail(outside);
}

export function fromWetBulb(
  wetBulbCelsius: number,
  airCelsius: number,
  pressure: number,
): Outcome<number, StateProblem> {
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

export function fromRelativeHumidityOverIce(
  relativeHumidity: number,
  airCelsius: number,
  pressure: number,
): Outcome<number, StateProblem> {
  const quantity = 'relative-humidity-ice';
  if (airCelsius > TRIPLE_POINT_CELSIUS) return fail(noIce(quantity, airCelsius));
  return amount(
    quantity,
    relativeHumidity,
    vapourPressureFromRelativeHumidityOverIce(relativeHumidity, airCelsius, pressure),
  );
}

export function fromVapourPressureDeficit(
  deficit: number,
  airCelsius: number,
  pressure: number,
): Outcome<number, StateProblem> {
  const vapourPressure = saturatedVapourPressure(airCelsius, pressure, 'water') - deficit;
  return amount('vapour-pressure', vapourPressure, vapourPressure);
}
