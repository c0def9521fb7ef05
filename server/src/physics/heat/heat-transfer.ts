/** Convection between air and a body that stands in it: published correlations for cylinders and plates. */

import type { AirProperties } from '../air/air-properties.ts';
import { STANDARD_GRAVITY } from '../constants.ts';
import type { Formula } from '../formula.ts';

/** Nu = 0.3 + 0.62 Re^1/2 Pr^1/3 / [1 + (0.4/Pr)^2/3]^1/4 · [1 + (Re/282000)^5/8]^4/5 */
export const CROSS_FLOW_CYLINDER: Formula = {
  id: 'churchill-bernstein-1977',
  title: 'Forced convection of a cylinder in cross flow, Churchill and Bernstein 1977',
  source: 'Churchill and Bernstein, J. Heat Transfer 99 (1977) 300',
  validity: [{ argument: 'reynolds-times-prandtl', low: 0.2, high: 1e7, unit: '' }],
};

/**
 * Reynolds number of a flow of `speed` m/s around a body of `diameter` metres: v·D/ν.
 * Worked value (Incropera, example 7.4): 10 m/s, 12.7 mm, ν 20.92e-6 m²/s gives 6071.
 */
export function reynoldsNumber(speed: number, diameter: number, air: AirProperties): number {
  return (speed * diameter) / air.kinematicViscosity;
}

/**
 * Grashof number of a body `temperatureDifference` kelvin from the air, over its `length` in metres: g·β·ΔT·L³/ν².
 * Worked value (Incropera, example 9.2): 0.71 m, 209 K, β 0.0025 1/K, ν 26.4e-6 m²/s gives 2.63e9.
 */
export function grashofNumber(length: number, temperatureDifference: number, air: AirProperties): number {
  const buoyancy = STANDARD_GRAVITY * air.thermalExpansion * Math.abs(temperatureDifference);
  return (buoyancy * length ** 3) / air.kinematicViscosity ** 2;
}

/**
 * Nusselt number, over the diameter, of a cylinder across the flow.
 *
 * Churchill and Bernstein 1977; see `CROSS_FLOW_CYLINDER`. Published for Re·Pr above 0.2, about ±20 % of the data.
 * Without flow it gives 0.3, so that it stays finite; natural convection then governs.
 *
 * Worked value (Incropera, example 7.4): Re 6071, Pr 0.70 gives 40.6.
 *
 * @param reynolds over the diameter, dimensionless
 * @param prandtl dimensionless
 */
export function crossFlowCylinderNusselt(reynolds: number, prandtl: number): number {
  const laminar = (0.62 * Math.sqrt(reynolds) * Math.cbrt(prandtl)) / (1 + (0.4 / prandtl) ** (2 / 3)) ** 0.25;
  return 0.3 + laminar * (1 + (reynolds / 282_000) ** (5 / 8)) ** 0.8;
}

/**
 * Nusselt number, over the diameter, of a horizontal cylinder in still air.
 *
 * {0.60 + 0.387 Ra^1/6 / [1 + (0.559/Pr)^9/16]^8/27}²: Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1049.
 * Published for Ra 1e-5 to 1e12, about ±15 %.
 *
 * Worked value (test of the open library `ht`): Pr 0.69, Gr 2.63e9 gives 139.1.
 *
 * @param rayleigh over the diameter, dimensionless
 * @param prandtl dimensionless
 */
export function horizontalCylinderNusselt(rayleigh: number, prandtl: number): number {
  return churchillChu(0.6, 0.559, rayleigh, prandtl);
}

/**
 * Nusselt number, over the height, of a vertical plate in still air.
 *
 * {0.825 + 0.387 Ra^1/6 / [1 + (0.492/Pr)^9/16]^8/27}²: Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1323.
 * Published for Ra 0.1 to 1e12, laminar and turbulent, about ±15 %.
 *
 * Worked value (Incropera, example 9.2): Pr 0.69, Gr 2.63e9 gives 147.
 *
 * @param rayleigh over the height, dimensionless
 * @param prandtl dimensionless
 */
export function verticalPlateNusselt(rayleigh: number, prandtl: number): number {
  return churchillChu(0.825, 0.492, rayleigh, prandtl);
}

/**
 * Nusselt number, over the height, of a slender vertical cylinder in still air: the plate, corrected for curvature.
 * A probe's head is far too slender for the plate alone, which holds from D/L = 35/Gr^1/4 upwards.
 *
 * Nu(plate) · {1 + B [32^1/2 Gr^-1/4 L/D]^C}, B and C functions of Pr: Popiel, Wojtkowiak and Bober, Exp. Therm. Fluid
 * Sci. 32 (2007) 607. Pr 0.01 to 100, laminar. Coefficients as the open library `ht` has them. Grows without bound as
 * Gr goes to 0: keep Gr above 0.
 *
 * Worked value (computed): Pr 0.7, Gr 1e5, L/D 5 gives 12.2 where the plate gives 8.4.
 *
 * @param grashof over the height, dimensionless, above 0
 * @param prandtl dimensionless
 * @param slenderness height over diameter
 */
export function verticalCylinderNusselt(grashof: number, prandtl: number, slenderness: number): number {
  const scale = 0.0571322 + 0.20305 * prandtl ** -0.43;
  const exponent = 0.9165 - 0.0043 * Math.sqrt(prandtl) + 0.01333 * Math.log(prandtl) + 0.0004809 / prandtl;
  const curvature = (Math.sqrt(32) * slenderness) / grashof ** 0.25;
  return verticalPlateNusselt(grashof * prandtl, prandtl) * (1 + scale * curvature ** exponent);
}

function churchillChu(conduction: number, prandtlScale: number, rayleigh: number, prandtl: number): number {
  const universal = (1 + (prandtlScale / prandtl) ** (9 / 16)) ** (8 / 27);
  return (conduction + (0.387 * rayleigh ** (1 / 6)) / universal) ** 2;
}
