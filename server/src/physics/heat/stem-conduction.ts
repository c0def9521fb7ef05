/**
 * The immersed stem of a probe as a fin between the wall and the air: how far the wall pulls the tip from the air
 * temperature, and the insertion that keeps that error small.
 */
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import type { Formula } from '../formula.ts';

/** A tube; a solid rod has a wall of half its diameter. Leads and filling inside the tube are left out. */
export interface Stem {
  /** m */
  readonly diameter: number;
  /** m */
  readonly wallThickness: number;
  /** W/(m·K) */
  readonly conductivity: number;
}

export interface InsertionUnneeded {
  readonly kind: 'error-not-positive';
}

/** T(air) - T(tip) = (T(air) - T(wall)) / cosh(m L), m = (h P / k A)^1/2 */
export const STEM_CONDUCTION: Formula = {
  id: 'stem-conduction',
  title: 'Stem of a probe as a fin with an adiabatic tip',
  source: 'Bird, Stewart and Lightfoot, Transport Phenomena, example 10.7-1',
  validity: [],
};

/**
 * Fin parameter m of a stem, 1/m: m = √(h P / k A) with the tube's outer perimeter and its metal section.
 *
 * Worked value (Incropera, example 3.9): 5 mm copper rod, k 398, h 100 gives 2.65/m = 0.19 m.
 *
 * @param filmCoefficient of the air on the stem, W/(m²·K)
 */
export function finParameter(stem: Stem, filmCoefficient: number): number {
  return Math.sqrt((filmCoefficient * perimeterOf(stem)) / (stem.conductivity * sectionOf(stem)));
}

/**
 * How far the tip reads below the air temperature, K; negative where the wall is warmer than the air.
 *
 * See `STEM_CONDUCTION`. An upper estimate for a sensor of some length, whose inner end is taken to be at the tip.
 *
 * Worked value (Bird, Stewart and Lightfoot, example 10.7-1): wall 350 °F, m L = √12, tip 500 °F gives air 510 °F.
 *
 * @param insertion length in the air, m
 * @param filmCoefficient of the air on the stem, W/(m²·K)
 * @param airCelsius air temperature, °C
 * @param wallCelsius temperature of the stem where it leaves the wall, °C
 */
export function stemConductionError(
  stem: Stem,
  insertion: number,
  filmCoefficient: number,
  airCelsius: number,
  wallCelsius: number,
): number {
  return (airCelsius - wallCelsius) / Math.cosh(finParameter(stem, filmCoefficient) * insertion);
}

/**
 * Least insertion, m, at which the stem-conduction error is no larger than `largestError`.
 *
 * The inverse of `stemConductionError`: L = arcosh(|T(air) − T(wall)| / error) / m; 0 where no insertion is needed.
 *
 * Worked value (computed): 6 × 0.5 mm steel tube, k 17, h 60, 30 K across, error 0.1 K gives 73 mm.
 *
 * @param largestError K, above 0
 */
export function insertionNeeded(
  stem: Stem,
  filmCoefficient: number,
  airCelsius: number,
  wallCelsius: number,
  largestError: number,
): Outcome<number, InsertionUnneeded> {
  if (!(largestError > 0)) return fail({ kind: 'error-not-positive' });
  const ratio = Math.abs(airCelsius - wallCelsius) / largestError;
  return succeed(ratio <= 1 ? 0 : Math.acosh(ratio) / finParameter(stem, filmCoefficient));
}

/**
 * Heat that a stem takes from a heated end per kelvin above the air, W/K, its far end held at air temperature.
 *
 * G = √(h P k A) · coth(m L): Incropera, table 3.4, case C, base to tip. A long stem gives √(h P k A).
 *
 * Worked value (Incropera, example 3.9): 5 mm copper rod, h 100, very long, 75 K above the air loses 8.3 W.
 *
 * @param length of the stem, m; taken as one diameter at the least, since the far end is no perfect sink
 * @param filmCoefficient of the air on the stem, W/(m²·K)
 */
export function stemConductance(stem: Stem, length: number, filmCoefficient: number): number {
  const longStem = Math.sqrt(filmCoefficient * perimeterOf(stem) * stem.conductivity * sectionOf(stem));
  return longStem / Math.tanh(finParameter(stem, filmCoefficient) * Math.max(length, stem.diameter));
}

function perimeterOf(stem: Stem): number {
  return Math.PI * stem.diameter;
}

function sectionOf(stem: Stem): number {
  return Math.PI * stem.wallThickness * (stem.diameter - stem.wallThickness);
}
