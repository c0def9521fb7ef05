/** Dew point and frost point: the temperatures at which air of a given vapour pressure is saturated. */
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import { TRIPLE_POINT_CELSIUS } from '../constants.ts';
import { risingRoot } from '../mathematics/newton.ts';
import { saturatedVapour, saturatedVapourPressure } from './saturated-vapour.ts';
import type { WaterPhase } from './saturation.ts';

/** The coldest point looked for, in °C: as low as the enhancement factor over ice is published. */
export const COLDEST_POINT_CELSIUS = -100;
/** The hottest point looked for, in °C: just under the critical point of water. */
const HOTTEST_POINT_CELSIUS = 373;

/** The vapour pressure belongs to no dew or frost point between the two limits. Pressures in Pa. */
export type NoSuchPoint = TooDry | TooWet | AboveTriplePoint;

/** Drier than air saturated at the coldest point: dry air, for instance. */
export interface TooDry {
  readonly kind: 'too-dry-for-a-point';
  readonly phase: WaterPhase;
  readonly vapourPressure: number;
  readonly coldestCelsius: number;
}

/** Wetter than air saturated just under the critical point of water. */
export interface TooWet {
  readonly kind: 'too-wet-for-a-dew-point';
  readonly vapourPressure: number;
  readonly hottestCelsius: number;
}

/** A frost point does not exist above the triple point, 0.01 °C, because there is no ice. */
export interface AboveTriplePoint {
  readonly kind: 'no-frost-point-above-triple-point';
  readonly vapourPressure: number;
  readonly highestVapourPressure: number;
}

/**
 * Dew point in °C, over liquid water also below 0 °C, of vapour at a vapour pressure in Pa in air of a total pressure
 * in Pa: the root of f(td, p)·es(td) = e, with the enhancement factor taken at the dew point. −100 to 373 °C; the
 * vapour pressure of the result comes back within 1e-9 of the one given.
 * Source: definition after WMO-No. 8 ch. 4, annex 4.B; formulas of saturation.ts and enhancement.ts.
 * Worked value: 1585 Pa at 101325 Pa gives 13.81 °C.
 */
export function dewPointOfVapour(vapourPressure: number, pressure: number): Outcome<number, NoSuchPoint> {
  const isUsual = vapourPressure > USUAL_VAPOUR_PRESSURES.low && vapourPressure < USUAL_VAPOUR_PRESSURES.high;
  const problem = isUsual ? undefined : beyondDewPoints(vapourPressure, pressure);
  return problem === undefined
    ? succeed(saturationPoint(vapourPressure, pressure, 'water', HOTTEST_POINT_CELSIUS))
    : fail(problem);
}

/** Pa. They have a dew point at any pressure, so that the limits, some 0.003 Pa and 22 MPa, need not be computed. */
export const USUAL_VAPOUR_PRESSURES = { low: 1, high: 1e6 } as const;

function beyondDewPoints(vapourPressure: number, pressure: number): NoSuchPoint | undefined {
  if (!(vapourPressure >= saturatedVapourPressure(COLDEST_POINT_CELSIUS, pressure, 'water')))
    return tooDry('water', vapourPressure);
  if (vapourPressure > saturatedVapourPressure(HOTTEST_POINT_CELSIUS, pressure, 'water'))
    return { kind: 'too-wet-for-a-dew-point', vapourPressure, hottestCelsius: HOTTEST_POINT_CELSIUS };
  return undefined;
}

/**
 * Frost point in °C, over ice, of vapour at a vapour pressure in Pa in air of a total pressure in Pa: the root of
 * f(tf, p)·ei(tf) = e. −100 to 0.01 °C; above the triple point there is none. Accuracy and source as for the dew point.
 * Worked value: 103.68 Pa at 101325 Pa gives −20.00 °C.
 */
export function frostPointOfVapour(vapourPressure: number, pressure: number): Outcome<number, NoSuchPoint> {
  if (!(vapourPressure >= saturatedVapourPressure(COLDEST_POINT_CELSIUS, pressure, 'ice'))) {
    return fail(tooDry('ice', vapourPressure));
  }
  const highestVapourPressure = saturatedVapourPressure(TRIPLE_POINT_CELSIUS, pressure, 'ice');
  if (vapourPressure > highestVapourPressure) {
    return fail({ kind: 'no-frost-point-above-triple-point', vapourPressure, highestVapourPressure });
  }
  return succeed(saturationPoint(vapourPressure, pressure, 'ice', TRIPLE_POINT_CELSIUS));
}

/** Newton leaves an error far below its last step; 1e-7 K of dew point is already within 1e-8 of the vapour pressure. */
const SMALLEST_STEP = 1e-7;

/** Logarithms make the function nearly straight, so that Newton needs three or four steps. */
function saturationPoint(vapourPressure: number, pressure: number, phase: WaterPhase, highest: number): number {
  const tangentAt = (celsius: number) => {
    const saturated = saturatedVapour(celsius, pressure, phase);
    return {
      value: Math.log(saturated.vapourPressure / vapourPressure),
      slope: saturated.perCelsius / saturated.vapourPressure,
    };
  };
  return risingRoot(tangentAt, COLDEST_POINT_CELSIUS, highest, magnusPoint(vapourPressure), SMALLEST_STEP);
}

/** The inverse of the Magnus formula over water, WMO-No. 8 annex 4.B: a first guess that is near enough for ice too. */
function magnusPoint(vapourPressure: number): number {
  const exponent = Math.log(vapourPressure / 611.2);
  return (243.12 * exponent) / (17.62 - exponent);
}

function tooDry(phase: WaterPhase, vapourPressure: number): TooDry {
  return { kind: 'too-dry-for-a-point', phase, vapourPressure, coldestCelsius: COLDEST_POINT_CELSIUS };
}
