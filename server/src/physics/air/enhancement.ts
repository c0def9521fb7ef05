/**
 * Enhancement factor f: how much more vapour saturated air holds than the saturation pressure of pure water says,
 * because the air presses on the condensed phase and attracts the vapour. Vapour pressure of saturated air = f·es.
 */
import { checkValidity, type Formula, type OutsideFormula, type ValidityRange } from '../formula.ts';
import { type Saturation, saturation, saturationPressure, type WaterPhase } from './saturation.ts';

/** The pressure range is that usually quoted for the fits (from memory, unverified against the papers). */
const PRESSURE: ValidityRange = { argument: 'pressure', low: 5e3, high: 2e6, unit: 'Pa' };
/** Above the boiling point there is no saturated air, and the formula would give a vapour pressure above the total. */
const BELOW_BOILING: ValidityRange = { argument: 'saturation-pressure-over-pressure', low: 0, high: 1, unit: '1' };
const SOURCE =
  'Greenspan, J. Res. NBS 80A (1976) 41, in the ITS-90 coefficients of Hardy, Proc. 3rd Int. Symp. Humidity and Moisture, London 1998';

/** f = exp[α (1 − es/p) + β (p/es − 1)], α = Σ Ai t^i, β = exp(Σ Bi t^i), i = 0..3, t in °C */
export const ENHANCEMENT_OVER_WATER: Formula = {
  id: 'enhancement-over-water',
  title: 'Enhancement factor over water, Greenspan 1976 and Hardy 1998',
  source: SOURCE,
  validity: [{ argument: 'celsius', low: -50, high: 100, unit: 'degC' }, PRESSURE, BELOW_BOILING],
};

/** As over water, with other coefficients. */
export const ENHANCEMENT_OVER_ICE: Formula = {
  id: 'enhancement-over-ice',
  title: 'Enhancement factor over ice, Greenspan 1976 and Hardy 1998',
  source: SOURCE,
  validity: [{ argument: 'celsius', low: -100, high: 0.01, unit: 'degC' }, PRESSURE, BELOW_BOILING],
};

/** What the enhancement factor leaves of its formula's published range at a temperature in °C and a pressure in Pa. */
export function enhancementLeavesFormula(
  celsius: number,
  pressure: number,
  phase: WaterPhase,
): OutsideFormula | undefined {
  const formula = phase === 'water' ? ENHANCEMENT_OVER_WATER : ENHANCEMENT_OVER_ICE;
  const ratio = saturationPressure(celsius, phase) / pressure;
  return checkValidity(formula, { celsius, pressure, [BELOW_BOILING.argument]: ratio });
}

/** An enhancement factor, dimensionless, and its partial derivatives per K and per Pa. */
export interface Enhancement {
  readonly factor: number;
  readonly perCelsius: number;
  readonly perPressure: number;
}

/**
 * The enhancement factor that every state of air uses: inside the published range the formula itself, outside a
 * continuation without jumps, so that solvers pass. {@link enhancementLeavesFormula} tells which of the two it is.
 *
 * - Where the pressure is at or below the saturation pressure: 1, which the formula reaches by itself.
 * - Above 100 °C the water coefficients go on to that point. Hyland and Wexler 1983 table 2 gives f at 150 to 170 °C
 *   and up to 1 MPa: the continuation is within 0.13 % of it, where f = 1 would be 2.9 % off and, at 1 MPa, make a
 *   step of 2.9 % (0.8 K of dew point) at 100 °C.
 * - Over water from −50 to −100 °C the supercooled coefficients go on; below −100 °C f keeps its value there.
 * - Above 2 MPa f keeps its value at 2 MPa; below 5 kPa the formula goes on.
 *
 * Over water within 0.02 % of the ASHRAE RP-1485 route at 1 atm and 0.17 % at 2 MPa; over ice, at 1 atm, within 0.06 %
 * above −40 °C and 0.2 % above −80 °C.
 * Worked values: 101325 Pa gives 1.003991 over water at 20 °C, 1.005004 over ice at −40 °C.
 *
 * @param celsius temperature, °C
 * @param pressure of the moist air, Pa
 * @param saturated the saturation at that temperature, where it has been computed already
 */
export function enhancement(
  celsius: number,
  pressure: number,
  phase: WaterPhase,
  saturated: Saturation = saturation(celsius, phase),
): Enhancement {
  const terms = termsAt(celsius, pressure, phase, saturated.pressure);
  if (terms === undefined) return NO_ENHANCEMENT;
  const { factor, ratio } = terms;
  const { alpha, alphaSlope, beta, betaSlope } = terms.coefficients;
  const perLogRatio = -(alpha * ratio + beta / ratio);
  const perPressure = pressure > PRESSURE.high ? 0 : (-factor * perLogRatio) / pressure;
  if (celsius < COLDEST) return { factor, perCelsius: 0, perPressure };
  const logarithmicSlope = saturated.slope / saturated.pressure;
  const perCelsius = factor * (alphaSlope * (1 - ratio) + betaSlope * (1 / ratio - 1) + perLogRatio * logarithmicSlope);
  return { factor, perCelsius, perPressure };
}

/** The value of {@link enhancement} alone. @param saturated as there, its pressure in Pa */
export function enhancementFactor(
  celsius: number,
  pressure: number,
  phase: WaterPhase,
  saturated = saturationPressure(celsius, phase),
): number {
  return termsAt(celsius, pressure, phase, saturated)?.factor ?? NO_ENHANCEMENT.factor;
}

const COLDEST = -100;
const NO_ENHANCEMENT: Enhancement = { factor: 1, perCelsius: 0, perPressure: 0 };

interface Terms {
  readonly coefficients: Coefficients;
  /** Saturation pressure over pressure. */
  readonly ratio: number;
  readonly factor: number;
}

/** Undefined where the pressure is at or below the saturation pressure. */
function termsAt(celsius: number, pressure: number, phase: WaterPhase, saturated: number): Terms | undefined {
  const boundedPressure = Math.min(pressure, PRESSURE.high);
  const boundedSaturated = celsius < COLDEST ? saturationPressure(COLDEST, phase) : saturated;
  if (!(boundedPressure > boundedSaturated)) return undefined;
  const ratio = boundedSaturated / boundedPressure;
  const coefficients = coefficientsAt(Math.max(celsius, COLDEST), phase);
  const factor = Math.exp(coefficients.alpha * (1 - ratio) + coefficients.beta * (1 / ratio - 1));
  return { coefficients, ratio, factor };
}

/** α and ln β as cubics of the temperature in °C. */
interface CoefficientSet {
  readonly alpha: Cubic;
  readonly logBeta: Cubic;
}
type Cubic = readonly [number, number, number, number];

/** Hardy 1998 in its Celsius form. */
const WATER_ABOVE_ZERO: CoefficientSet = {
  alpha: [3.53624e-4, 2.9328363e-5, 2.6168979e-7, 8.5813609e-9],
  logBeta: [-10.7588, 6.3268134e-2, -2.5368934e-4, 6.3405286e-7],
};
const WATER_BELOW_ZERO: CoefficientSet = {
  alpha: [3.62183e-4, 2.6061244e-5, 3.866777e-7, 3.8268958e-9],
  logBeta: [-10.7604, 6.3987441e-2, -2.6351566e-4, 1.6725084e-6],
};
/** The third coefficient of ln β is that of Hardy's Kelvin set, shifted to °C. */
const ICE: CoefficientSet = {
  alpha: [3.64449e-4, 2.9367585e-5, 4.8874766e-7, 4.3669918e-9],
  logBeta: [-10.7271, 7.6215115e-2, -1.7490158e-4, 2.4668279e-6],
};

interface Coefficients {
  readonly alpha: number;
  readonly alphaSlope: number;
  readonly beta: number;
  readonly betaSlope: number;
}

/**
 * The two water sets differ at 0 °C, by 3 ppm of f at 1 atm and by 100 ppm at 2 MPa. Between −1 and 0 °C one passes
 * into the other in proportion, so that a dew point near zero has one solution.
 */
function coefficientsAt(celsius: number, phase: WaterPhase): Coefficients {
  if (phase === 'ice') return coefficientsOf(ICE, celsius);
  if (celsius >= 0) return coefficientsOf(WATER_ABOVE_ZERO, celsius);
  if (celsius <= -1) return coefficientsOf(WATER_BELOW_ZERO, celsius);
  const above = coefficientsOf(WATER_ABOVE_ZERO, celsius);
  const below = coefficientsOf(WATER_BELOW_ZERO, celsius);
  const share = celsius + 1;
  return {
    alpha: below.alpha + share * (above.alpha - below.alpha),
    alphaSlope: below.alphaSlope + share * (above.alphaSlope - below.alphaSlope) + above.alpha - below.alpha,
    beta: below.beta + share * (above.beta - below.beta),
    betaSlope: below.betaSlope + share * (above.betaSlope - below.betaSlope) + above.beta - below.beta,
  };
}

function coefficientsOf(set: CoefficientSet, celsius: number): Coefficients {
  const beta = Math.exp(cubic(set.logBeta, celsius));
  return {
    alpha: cubic(set.alpha, celsius),
    alphaSlope: cubicSlope(set.alpha, celsius),
    beta,
    betaSlope: beta * cubicSlope(set.logBeta, celsius),
  };
}

function cubic(of: Cubic, at: number): number {
  return of[0] + at * (of[1] + at * (of[2] + at * of[3]));
}

function cubicSlope(of: Cubic, at: number): number {
  return of[1] + at * (2 * of[2] + at * 3 * of[3]);
}
