/** Decisions in the face of uncertainty: conformance with a tolerance, agreement of two results. */
import type { Formula } from '../formula.ts';
import { normalProbability } from '../mathematics/normal-distribution.ts';

/** Either end may be left out. */
export interface ToleranceLimits {
  readonly low?: number;
  readonly high?: number;
}

/** En = (x - X) / (U(x)² + U(X)²)^1/2 */
export const EN_NUMBER: Formula = {
  id: 'en-number',
  title: 'En number of two results',
  source: 'ISO 13528, the En number; both uncertainties with coverage factor 2',
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
