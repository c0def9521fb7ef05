/**
 * What a heated head adds to the temperature of the air near it: its plume in still air, its wake in moving air.
 * Both are estimates within a factor of two, and are returned with that band.
 */
import { kelvinOf, STANDARD_GRAVITY } from '../constants.ts';
import type { Formula } from '../formula.ts';

/** Of the air at a point, K. */
export interface EstimatedWarming {
  readonly estimate: number;
  /** Half of the estimate. */
  readonly low: number;
  /** Twice the estimate, no more than the head's own rise. */
  readonly high: number;
}

/** Undisturbed air around the head. */
export interface AmbientAir {
  readonly celsius: number;
  /** kg/m³ */
  readonly density: number;
  /** J/(kg·K) */
  readonly specificHeat: number;
}

export interface HeadInFlow {
  /** m */
  readonly diameter: number;
  /** Across the flow, m. */
  readonly length: number;
}

/** Drag coefficient of a cylinder across the flow at Reynolds numbers of 1e3 to 1e5; common handbook value. */
const CYLINDER_DRAG = 1.2;

const NO_WARMING: EstimatedWarming = { estimate: 0, low: 0, high: 0 };

/** ΔT = 9.1 (T / (g cp² ρ²))^1/3 Q^2/3 z^-5/3 */
export const HEAD_PLUME: Formula = {
  id: 'heskestad-plume',
  title: 'Temperature rise on the axis of a buoyant plume, Heskestad and Zukoski',
  source:
    'Heskestad plume, as NUREG-1805 eq. 9-2; a fire correlation (kilowatts) extrapolated to watts: an estimate within a factor of two',
  validity: [],
};

/** ΔT = (Q/L) / (ρ cp U b (π / ln 2)^1/2), b = (x C(D) D)^1/2 / 4 */
export const HEAD_WAKE: Formula = {
  id: 'cylinder-wake',
  title: 'Temperature rise on the axis of the turbulent wake of a heated cylinder',
  source:
    'Half-width of a plane turbulent wake, Schlichting, Boundary-Layer Theory, ch. XXIV, from memory; heat carried in a profile of that width: an estimate within a factor of two',
  validity: [],
};

/**
 * Warming of the air straight above a heated head in still air.
 *
 * See `HEAD_PLUME`; the origin is taken at the head, which is on the warm side. Capped at the head's own rise. An
 * estimate within a factor of two: the correlation was made for fires. Beside and below the head it says nothing.
 *
 * Worked value (computed): 20 W, 0.5 m, 293 K, 1.2 kg/m³, 1000 J/(kg·K) gives 5.85 K.
 *
 * @param heat given to the air, W
 * @param height of the point above the head, m
 * @param headRise of the head above the air, K
 */
export function plumeWarming(heat: number, height: number, headRise: number, air: AmbientAir): EstimatedWarming {
  if (heat <= 0) return NO_WARMING;
  const buoyancy = kelvinOf(air.celsius) / (STANDARD_GRAVITY * (air.specificHeat * air.density) ** 2);
  return withinFactorOfTwo(9.1 * Math.cbrt(buoyancy) * heat ** (2 / 3) * height ** (-5 / 3), headRise);
}

/**
 * Warming of the air straight downstream of a heated head.
 *
 * See `HEAD_WAKE`: the head's heat, carried off at the air's speed in a Gaussian profile whose half-width at half
 * maximum is that of the plane wake of a cylinder. Heat spreads somewhat wider than momentum, and past the head's ends,
 * so that this is on the warm side; within some 50 diameters the wake is not yet self-similar. Capped at the head's
 * own rise. An estimate within a factor of two.
 *
 * Worked value (computed): 4 W, 12 × 60 mm head, 0.12 m downstream at 2 m/s, 1.06 kg/m³, 1006 J/(kg·K) gives 1.4 K.
 *
 * @param heat given to the air, W
 * @param distance downstream, m
 * @param speed of the air, m/s
 * @param headRise of the head above the air, K
 */
export function wakeWarming(
  heat: number,
  distance: number,
  speed: number,
  head: HeadInFlow,
  headRise: number,
  air: AmbientAir,
): EstimatedWarming {
  if (heat <= 0) return NO_WARMING;
  const width = wakeHalfWidth(distance, head.diameter) * Math.sqrt(Math.PI / Math.LN2);
  const carried = head.length * air.density * air.specificHeat * speed * width;
  return withinFactorOfTwo(heat / carried, headRise);
}

/**
 * Distance from the axis of a cylinder's wake at which it is half as strong, m: b = √(x·C_D·D)/4.
 *
 * Schlichting, Boundary-Layer Theory, ch. XXIV, from memory. Worked value (computed): 12 mm, 0.12 m gives 10.4 mm.
 *
 * @param distance downstream, m
 * @param diameter of the cylinder, m
 */
export function wakeHalfWidth(distance: number, diameter: number): number {
  return Math.sqrt(distance * CYLINDER_DRAG * diameter) / 4;
}

/** Capped, because air near a head is no warmer than the head, however short the distance or low the speed. */
function withinFactorOfTwo(warming: number, headRise: number): EstimatedWarming {
  const estimate = Math.min(warming, headRise);
  return { estimate, low: estimate / 2, high: Math.min(2 * estimate, headRise) };
}
