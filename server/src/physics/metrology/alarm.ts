/** What uncertainty does to an alarm: misses, false alarms, and the limit and hysteresis that allow for it. */
import type { Formula } from '../formula.ts';
import { normalProbability, normalQuantile } from '../mathematics/normal-distribution.ts';
import { roundDownToStep, roundUpToStep } from '../mathematics/sensible-steps.ts';

export type AlarmDirection = 'above' | 'below';

/** A miss one tolerance beyond the limit may happen this often before the limit should move inwards. */
export const ACCEPTABLE_MISSES = 0.05;

/** Repeatability limit: two readings of one value differ by less than 2.8 standard deviations in 95 % of cases. */
const REPEATABILITY_FACTOR = 2.8;

/** p = Φ(-tolerance/u) */
export const ALARM_ERRORS: Formula = {
  id: 'alarm-errors',
  title: 'Probability of a missed and of a false alarm one tolerance from the limit',
  source: 'Normal distribution of the reading; after JCGM 106:2012',
  validity: [],
};

/** hysteresis = 2.8 s */
export const LEAST_HYSTERESIS: Formula = {
  id: 'least-hysteresis',
  title: 'Least hysteresis that noise does not cross',
  source: 'Repeatability limit of ISO 5725-6, 4.1; its use for hysteresis is common practice',
  validity: [],
};

/**
 * Probability of silence while the quantity is one tolerance beyond the limit, and of an alarm while it is one tolerance
 * inside: that a reading is off by more than the tolerance to one given side. See `ALARM_ERRORS`.
 *
 * Worked value (normal table): tolerance 2, u 1 gives 2.3 %. Without uncertainty it is 0.
 *
 * @param tolerance distance from the wanted limit at which the alarm is judged, above 0
 * @param standardUncertainty of the reading, in the same unit, 0 or more
 */
export function alarmErrorProbability(tolerance: number, standardUncertainty: number): number {
  return normalProbability(-tolerance / standardUncertainty);
}

/**
 * The limit to set so that no more than 5 % of excursions by one tolerance are missed.
 *
 * Inwards of the wanted limit by g = max(0, 1.645·u − tolerance).
 *
 * Worked value (computed): above 95, tolerance 1, u 1 gives 94.36.
 *
 * @param limit wanted
 * @param tolerance in the unit of the limit
 * @param standardUncertainty of the reading, in the unit of the limit
 */
export function guardBandedLimit(
  limit: number,
  direction: AlarmDirection,
  tolerance: number,
  standardUncertainty: number,
): number {
  const guardBand = Math.max(0, normalQuantile(1 - ACCEPTABLE_MISSES) * standardUncertainty - tolerance);
  return direction === 'above' ? limit - guardBand : limit + guardBand;
}

/**
 * Least sensible hysteresis, in the unit of the noise.
 *
 * 2.8 standard deviations: two readings of one steady value are further apart in 5 % of cases only. Noise is what
 * changes from reading to reading, such as resolution and turbulence; an offset of the sensor does not chatter.
 *
 * Worked value (ISO 5725-6): noise of 0.5 gives 1.4.
 *
 * @param noiseStandardDeviation 0 or more
 */
export function leastHysteresis(noiseStandardDeviation: number): number {
  return REPEATABILITY_FACTOR * noiseStandardDeviation;
}

/**
 * Where an alarm should clear, in the unit that it is shown in: at least `hysteresis` from the limit, on a multiple of
 * 0.5 while the hysteresis is under 2, of 1 from there. Above 95 with a hysteresis of 1.4 it clears at 93.5.
 */
export function sensibleClear(limit: number, direction: AlarmDirection, hysteresis: number): number {
  const step = hysteresis < 2 ? 0.5 : 1;
  return direction === 'above' ? roundDownToStep(limit - hysteresis, step) : roundUpToStep(limit + hysteresis, step);
}
