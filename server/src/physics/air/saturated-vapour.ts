/** Vapour pressure of saturated air, f·es, with the derivatives that solvers and uncertainty budgets need. */
import { enhancement, enhancementFactor } from './enhancement.ts';
import { saturation, saturationPressure, type WaterPhase } from './saturation.ts';

/** Vapour pressure of saturated air in Pa, and how it changes per K of temperature and per Pa of total pressure. */
export interface SaturatedVapour {
  readonly vapourPressure: number;
  readonly perCelsius: number;
  readonly perPressure: number;
}

/**
 * Vapour pressure in Pa of air saturated over the phase named, at a temperature in °C and a total pressure in Pa:
 * enhancement factor times saturation pressure (ASHRAE Handbook Fundamentals ch. 1, real moist air). Where the total
 * pressure is below the saturation pressure no saturated air exists and this is the saturation pressure itself.
 * Worked value: over water at 20 °C and 101325 Pa, 1.003991 · 2339.19 Pa = 2348.53 Pa.
 */
export function saturatedVapour(celsius: number, pressure: number, phase: WaterPhase): SaturatedVapour {
  const saturated = saturation(celsius, phase);
  const { factor, perCelsius, perPressure } = enhancement(celsius, pressure, phase, saturated);
  return {
    vapourPressure: factor * saturated.pressure,
    perCelsius: factor * saturated.slope + perCelsius * saturated.pressure,
    perPressure: perPressure * saturated.pressure,
  };
}

/** The value of {@link saturatedVapour} alone, in Pa. */
export function saturatedVapourPressure(celsius: number, pressure: number, phase: WaterPhase): number {
  const saturated = saturationPressure(celsius, phase);
  return enhancementFactor(celsius, pressure, phase, saturated) * saturated;
}
