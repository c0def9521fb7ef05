/** What uncertainty does to an alarm: misses, false alarms, and the limit and hysteresis that allow for it. */
import type { Formula } from './formula.ts';
import { normalProbability, normalQuantile } from './normal-distribution.ts';

export type AlarmDirection = 'above' | 'below';

export interface AlarmErrors {
  /** Probability of silence while the quantity is one tolerance beyond the limit. */
  readonly missed: number;
  /** Probability of an alarm while the quantity is one tolerance inside the limit. */
  readonly falseAlarm: number;
}

/** A miss one tolerance beyond the limit may happen this often before the limit should move inwards. */
export const ACCEPTABLE_MISSES = 0.05;

/** Repeatability limit: two readings of one value differ by less than 2.8 standard deviations in 95 % of cases. */
const REPEATABILITY_FACTOR = 2.8;

/** p(missed) = Φ(-(tolerance + g)/u), p(false) = Φ(-(tolerance - g)/u), g: how far inwards the limit is set */
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
 * Probabilities of a missed and of a false alarm; see `ALARM_ERRORS`.
 *
 * Worked value (computed): tolerance 2, u 1, limit as wanted: 2.3 % each.
 *
 * @param tolerance distance from the wanted limit at which the alarm is judged, above 0
 * @param standardUncertainty of the reading, in the same unit, 0 or more
 * @param guardBand how far inwards of the wanted limit the alarm is set, in the same unit
 */
export function alarmErrors(tolerance: number, standardUncertainty: number, guardBand = 0): AlarmErrors {
  return {
    missed: probabilityOfPassing(tolerance + guardBand, standardUncertainty),
    falseAlarm: probabilityOfPassing(tolerance - guardBand, standardUncertainty),
  };
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

/** Probability that a reading is off by more than `distance` to one given side. */
function probabilityOfPassing(distance: number, standardUncertainty: number): number {
  if (standardUncertainty > 0) return normalProbability(-distance / standardUncertainty);
  return distance > 0 ? 0 : 1;
}
