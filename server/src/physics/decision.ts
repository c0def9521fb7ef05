/** Decisions in the face of uncertainty: conformance with a tolerance, guard bands, agreement of two results. */
import type { Formula } from './formula.ts';
import { normalProbability } from './normal-distribution.ts';

/** Either end may be left out. */
export interface ToleranceLimits {
  readonly low?: number;
  readonly high?: number;
}

/** The non-binary statements of ILAC-G8 with a guard band of the expanded uncertainty. */
export type Verdict = 'pass' | 'conditional-pass' | 'conditional-fail' | 'fail';

export const EN_NUMBER: Formula = {
  id: 'en-number',
  title: 'En number of two results',
  equation: 'En = (x - X) / (U(x)² + U(X)²)^1/2',
  source: 'ISO 13528, 9.7 (numbered from memory); both uncertainties with coverage factor 2',
  validity: [],
};

/** Coverage factor of the uncertainties that an En number is made of. */
export const EN_COVERAGE = 2;

/**
 * Probability that a quantity lies within its limits, given a result and its standard uncertainty.
 *
 * Φ((T(high) − y)/u) − Φ((T(low) − y)/u), JCGM 106:2012 eq. 7 to 10 (numbered from memory): a normal distribution
 * around the result. Without uncertainty it is 0 or 1.
 *
 * Worked value (JCGM 106, from memory): −5.47 V, u 0.05 V, upper limit −5.40 V gives 0.919.
 *
 * @param value the result
 * @param standardUncertainty of it, 0 or more
 */
export function conformanceProbability(value: number, standardUncertainty: number, limits: ToleranceLimits): number {
  const { low = -Infinity, high = Infinity } = limits;
  if (standardUncertainty === 0) return value >= low && value <= high ? 1 : 0;
  const upTo = (limit: number): number => normalProbability((limit - value) / standardUncertainty);
  return Math.max(0, upTo(high) - upTo(low));
}

/**
 * Verdict on a deviation against a tolerance T, with a guard band of the expanded uncertainty U.
 *
 * Pass within T − U, conditional pass within T, conditional fail within T + U, else fail: ILAC-G8:09/2019, non-binary
 * statement, w = U.
 *
 * Worked value (at second hand): tolerance 0.003, U 0.0010: passes up to 0.002.
 *
 * @param deviation found, either sign
 * @param tolerance permitted, either side
 * @param expandedUncertainty of the deviation, k = 2
 */
export function guardBandedVerdict(deviation: number, tolerance: number, expandedUncertainty: number): Verdict {
  const size = Math.abs(deviation);
  if (size <= tolerance - expandedUncertainty) return 'pass';
  if (size <= tolerance) return 'conditional-pass';
  return size <= tolerance + expandedUncertainty ? 'conditional-fail' : 'fail';
}

/**
 * En number of a result and a reference; above 1, either side, they disagree. Undefined without any uncertainty.
 *
 * Worked value (by hand): 74.6 ± 0.8 against 75.3 ± 0.6 gives −0.70.
 *
 * @param expandedUncertainty of the result, k = 2
 * @param referenceExpandedUncertainty of the reference, k = 2
 */
export function enNumber(
  result: number,
  expandedUncertainty: number,
  reference: number,
  referenceExpandedUncertainty: number,
): number | undefined {
  const together = Math.hypot(expandedUncertainty, referenceExpandedUncertainty);
  return together > 0 ? (result - reference) / together : undefined;
}
