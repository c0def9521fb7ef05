/** The temperature along the immersed stem of a probe, from the wall to its tip or to its heated head. */
import { finParameter, type Stem } from './stem-conduction.ts';

/** What a stem stands between. */
export interface StemSurroundings {
  /** Length of the stem in the air, m. */
  readonly length: number;
  /** Film coefficient of the air on the stem, W/(m²·K). */
  readonly film: number;
  readonly airCelsius: number;
  /** Where the stem leaves the wall, °C. */
  readonly wallCelsius: number;
  /** Of a heated head at the far end, °C; undefined for a free tip, which is taken as adiabatic. */
  readonly headCelsius: number | undefined;
}

/**
 * Temperature of a stem at a distance from the wall, °C.
 *
 * With θ = T − T(air) and a free tip θ = θ(wall) cosh(m (L − x)) / cosh(m L), with a held end
 * θ = (θ(end) sinh(m x) + θ(wall) sinh(m (L − x))) / sinh(m L): Incropera, table 3.4, cases B and C. At the wall it is
 * that of the wall, at a held end that of the head; at a free tip it is the air temperature less `stemConductionError`.
 *
 * Worked value (Incropera, problem 3.131 type): k 180, P/A = 2000/m, h 100, 10 mm, 100 °C in air of 25 °C: tip 96.0 °C.
 *
 * @param distance from the inner surface of the wall, m, 0 to the length
 */
export function stemCelsius(stem: Stem, around: StemSurroundings, distance: number): number {
  const { length, film, airCelsius, wallCelsius, headCelsius } = around;
  const m = finParameter(stem, film);
  const toEnd = m * (length - distance);
  const ofWall = wallCelsius - airCelsius;
  if (headCelsius === undefined) return airCelsius + ofWall * coshRatio(toEnd, m * length);
  if (length === 0) return wallCelsius; // the head stands at the wall, and there is no stem between
  const ofHead = headCelsius - airCelsius;
  return airCelsius + ofHead * sinhRatio(m * distance, m * length) + ofWall * sinhRatio(toEnd, m * length);
}

/** cosh(x) / cosh(whole) for 0 ≤ x ≤ whole, without overflow. */
function coshRatio(x: number, whole: number): number {
  return (Math.exp(x - whole) * (1 + Math.exp(-2 * x))) / (1 + Math.exp(-2 * whole));
}

/** sinh(x) / sinh(whole) for 0 ≤ x ≤ whole and a whole above 0, without overflow. */
function sinhRatio(x: number, whole: number): number {
  return (Math.exp(x - whole) * Math.expm1(-2 * x)) / Math.expm1(-2 * whole);
}
