/**
 * Saturation pressure of pure water over liquid water and over ice, and its slope with temperature.
 *
 * These functions are called in the innermost loops. They return a finite number for every temperature from −150 °C
 * up and check nothing: the range is checked once, where a state of air is made (state.ts).
 */
import { kelvinOf, TRIPLE_POINT_CELSIUS, TRIPLE_POINT_PRESSURE } from '../constants.ts';
import type { Formula } from '../formula.ts';

/** The condensed phase that vapour is in equilibrium with. Below 0.01 °C water means supercooled water. */
export type WaterPhase = 'water' | 'ice';

const CRITICAL_KELVIN = 647.096;
const CRITICAL_PRESSURE = 22.064e6;
const TRIPLE_POINT_KELVIN = kelvinOf(TRIPLE_POINT_CELSIUS);

/**
 * ln(p/pc) = (Tc/T)·(a1 θ + a2 θ^1.5 + a3 θ^3 + a4 θ^3.5 + a5 θ^4 + a6 θ^7.5), θ = 1 − T/Tc, Tc = 647.096 K,
 * pc = 22.064 MPa
 */
export const SATURATION_OVER_WATER: Formula = {
  id: 'saturation-over-water',
  title: 'Saturation pressure over water, IAPWS SR1-86(1992)',
  source: 'IAPWS SR1-86(1992), eq. 1; Wagner and Pruß, J. Phys. Chem. Ref. Data 22 (1993) 783',
  validity: [{ argument: 'celsius', low: TRIPLE_POINT_CELSIUS, high: 373.946, unit: 'degC' }],
};

/**
 * ln p = 54.842763 − 6763.22/T − 4.210 ln T + 0.000367 T
 *        + tanh[0.0415 (T − 218.8)]·(53.878 − 1331.22/T − 9.44523 ln T + 0.014025 T)
 */
const SATURATION_OVER_SUPERCOOLED_WATER: Formula = {
  id: 'saturation-over-supercooled-water',
  title: 'Saturation pressure over supercooled water, Murphy and Koop 2005',
  source: 'Murphy and Koop, Q. J. R. Meteorol. Soc. 131 (2005) 1539, eq. 10',
  validity: [{ argument: 'celsius', low: -150.15, high: TRIPLE_POINT_CELSIUS, unit: 'degC' }],
};

/** ln(p/611.657 Pa) = (1/θ)·(a1 θ^b1 + a2 θ^b2 + a3 θ^b3), θ = T/273.16 K */
export const SATURATION_OVER_ICE: Formula = {
  id: 'saturation-over-ice',
  title: 'Saturation pressure over ice, IAPWS R14-08(2011)',
  source: 'IAPWS R14-08(2011), eq. 6',
  validity: [{ argument: 'celsius', low: -223.15, high: TRIPLE_POINT_CELSIUS, unit: 'degC' }],
};

/** The formula in force over liquid water at a temperature in °C: that for supercooled water below the triple point. */
export function saturationFormulaOverWater(celsius: number): Formula {
  return celsius < TRIPLE_POINT_CELSIUS ? SATURATION_OVER_SUPERCOOLED_WATER : SATURATION_OVER_WATER;
}

/**
 * Saturation pressure over liquid water in Pa at a temperature in °C.
 *
 * From 0.01 to 373.946 °C this is IAPWS SR1-86(1992) eq. 1, within 0.02 % of IAPWS-IF97 up to 200 °C. Below, over
 * supercooled water, it is Murphy and Koop 2005 eq. 10, chosen because it rests on the measured heat capacity of
 * supercooled water, where the other formulations extrapolate a fit made above 0 °C; those lie higher by 0.06 % at
 * −20 °C, 0.6 % at −40 °C and 1.9 % at −50 °C.
 * At the triple point the two differ by 4e-8 in value and 0.03 % in slope; the join (see JOIN_OFFSET) takes up both,
 * so that value and slope are continuous, and shifts the lower formula by at most 15 ppm, within 10 K of the join.
 * Above the critical temperature, where no liquid is, it stays at the critical pressure: a head can be asked to be
 * hotter than its air by any number of kelvins, and still sees a finite humidity.
 *
 * Worked value: 20 °C gives 2339.19 Pa.
 */
export function saturationPressureOverWater(celsius: number): number {
  const kelvin = kelvinOf(celsius);
  if (kelvin >= CRITICAL_KELVIN) return CRITICAL_PRESSURE;
  if (celsius >= TRIPLE_POINT_CELSIUS) return CRITICAL_PRESSURE * Math.exp(logarithmOverWarmWater(kelvin));
  const below = kelvin - TRIPLE_POINT_KELVIN;
  const join = (JOIN_OFFSET + JOIN_SLOPE * below) * Math.exp(below / JOIN_WIDTH);
  return Math.exp(logarithmOverSupercooledWater(kelvin) + join);
}

/**
 * Slope of the saturation pressure over liquid water in Pa/K at a temperature in °C: the exact derivative of
 * {@link saturationPressureOverWater}, same sources and range. Worked value: 20 °C gives 144.91 Pa/K.
 * @param pressure the saturation pressure in Pa at that temperature, where it has been computed already
 */
export function saturationSlopeOverWater(celsius: number, pressure = saturationPressureOverWater(celsius)): number {
  const kelvin = kelvinOf(celsius);
  if (kelvin >= CRITICAL_KELVIN) return 0;
  if (celsius >= TRIPLE_POINT_CELSIUS) return pressure * logarithmicSlopeOverWarmWater(kelvin);
  const below = kelvin - TRIPLE_POINT_KELVIN;
  const joinSlope = (JOIN_SLOPE + (JOIN_OFFSET + JOIN_SLOPE * below) / JOIN_WIDTH) * Math.exp(below / JOIN_WIDTH);
  return pressure * (logarithmicSlopeOverSupercooledWater(kelvin) + joinSlope);
}

/**
 * Saturation pressure over ice in Pa at a temperature in °C: IAPWS R14-08(2011) eq. 6, −223.15 to 0.01 °C; the
 * published formulations differ by 0.07 % at −40 °C and 0.3 % at −100 °C. Above 0.01 °C there is no ice; the formula
 * goes on smoothly.
 * Worked value: −43.15 °C (230 K) gives 8.94735 Pa.
 */
export function saturationPressureOverIce(celsius: number): number {
  const theta = kelvinOf(celsius) / TRIPLE_POINT_KELVIN;
  const sum = -21.2144006 * theta ** 0.00333333333 + 27.3203819 * theta ** 1.20666667 - 6.1059813 * theta ** 1.70333333;
  return TRIPLE_POINT_PRESSURE * Math.exp(sum / theta);
}

/**
 * Slope of the saturation pressure over ice in Pa/K at a temperature in °C: the exact derivative of
 * {@link saturationPressureOverIce}, same source and range. Worked value: −20 °C gives 9.91 Pa/K.
 * @param pressure the saturation pressure in Pa at that temperature, where it has been computed already
 */
export function saturationSlopeOverIce(celsius: number, pressure = saturationPressureOverIce(celsius)): number {
  const theta = kelvinOf(celsius) / TRIPLE_POINT_KELVIN;
  const derivative =
    21.2144006 * (1 - 0.00333333333) * theta ** (0.00333333333 - 2) +
    27.3203819 * (1.20666667 - 1) * theta ** (1.20666667 - 2) -
    6.1059813 * (1.70333333 - 1) * theta ** (1.70333333 - 2);
  return (pressure * derivative) / TRIPLE_POINT_KELVIN;
}

/** Saturation pressure in Pa over the phase named, at a temperature in °C. Worked value: −10 °C over ice, 259.87 Pa. */
export function saturationPressure(celsius: number, phase: WaterPhase): number {
  return phase === 'water' ? saturationPressureOverWater(celsius) : saturationPressureOverIce(celsius);
}

/** Saturation pressure in Pa and its slope in Pa/K, at one temperature. */
export interface Saturation {
  readonly pressure: number;
  readonly slope: number;
}

/** Both over the phase named, at a temperature in °C. Worked value: 20 °C over water, 2339.19 Pa and 144.91 Pa/K. */
export function saturation(celsius: number, phase: WaterPhase): Saturation {
  const pressure = saturationPressure(celsius, phase);
  const slope =
    phase === 'water' ? saturationSlopeOverWater(celsius, pressure) : saturationSlopeOverIce(celsius, pressure);
  return { pressure, slope };
}

/** ln(p/pc) of IAPWS SR1-86(1992) eq. 1; the half powers are written as products with a square root, for speed. */
function logarithmOverWarmWater(kelvin: number): number {
  const theta = 1 - kelvin / CRITICAL_KELVIN;
  const root = Math.sqrt(theta);
  const cube = theta * theta * theta;
  const sum =
    theta * (-7.85951783 + 1.84408259 * root) +
    cube * (-11.7866497 + 22.6807411 * root - 15.9618719 * theta) +
    1.80122502 * cube * cube * theta * root;
  return (CRITICAL_KELVIN / kelvin) * sum;
}

/** d ln p/dT = −[ln(p/pc) + d(sum)/dθ]/T, as SR1-86 gives it for the Clausius–Clapeyron equation. */
function logarithmicSlopeOverWarmWater(kelvin: number): number {
  const theta = 1 - kelvin / CRITICAL_KELVIN;
  const root = Math.sqrt(theta);
  const square = theta * theta;
  const derivative =
    -7.85951783 +
    1.5 * 1.84408259 * root +
    square * (-3 * 11.7866497 + 3.5 * 22.6807411 * root - 4 * 15.9618719 * theta) +
    7.5 * 1.80122502 * square * square * square * root;
  return -(logarithmOverWarmWater(kelvin) + derivative) / kelvin;
}

/** ln p of Murphy and Koop 2005 eq. 10, p in Pa. */
function logarithmOverSupercooledWater(kelvin: number): number {
  const logarithm = Math.log(kelvin);
  const cold = 54.842763 - 6763.22 / kelvin - 4.21 * logarithm + 0.000367 * kelvin;
  const warm = 53.878 - 1331.22 / kelvin - 9.44523 * logarithm + 0.014025 * kelvin;
  return cold + Math.tanh(0.0415 * (kelvin - 218.8)) * warm;
}

function logarithmicSlopeOverSupercooledWater(kelvin: number): number {
  const tangent = Math.tanh(0.0415 * (kelvin - 218.8));
  const warm = 53.878 - 1331.22 / kelvin - 9.44523 * Math.log(kelvin) + 0.014025 * kelvin;
  const coldSlope = 6763.22 / (kelvin * kelvin) - 4.21 / kelvin + 0.000367;
  const warmSlope = 1331.22 / (kelvin * kelvin) - 9.44523 / kelvin + 0.014025;
  return coldSlope + tangent * warmSlope + 0.0415 * (1 - tangent * tangent) * warm;
}

/**
 * The join at the triple point. Below it, ln p of Murphy and Koop gets (offset + slope·ΔT)·exp(ΔT/width) added, where
 * ΔT = T − 273.16 K is negative: at ΔT = 0 this equals the difference of the two formulas in value and in slope, and
 * a few widths below nothing is left of it.
 */
const JOIN_WIDTH = 2;
const JOIN_OFFSET =
  Math.log(CRITICAL_PRESSURE) +
  logarithmOverWarmWater(TRIPLE_POINT_KELVIN) -
  logarithmOverSupercooledWater(TRIPLE_POINT_KELVIN);
const JOIN_SLOPE =
  logarithmicSlopeOverWarmWater(TRIPLE_POINT_KELVIN) -
  logarithmicSlopeOverSupercooledWater(TRIPLE_POINT_KELVIN) -
  JOIN_OFFSET / JOIN_WIDTH;
