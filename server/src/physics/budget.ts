/** An uncertainty budget after the GUM (JCGM 100:2008): contributions, their combination, and what each share is. */
import type { Formula } from './formula.ts';

export interface Contribution {
  readonly name: string;
  /** In the input's own unit. */
  readonly standardUncertainty: number;
  /** Of the result, per unit of the input. */
  readonly sensitivity: number;
  /** Left out: taken as known, which is to say without limit. */
  readonly degreesOfFreedom?: number;
}

/** Between two contributions, by name. What is left out is uncorrelated. */
export interface Correlation {
  readonly between: readonly [string, string];
  /** −1 to 1 */
  readonly coefficient: number;
}

export interface ContributionShare {
  readonly contribution: Contribution;
  /** |c|·u in the unit of the result. */
  readonly resultUncertainty: number;
  /** Part of the variance of the result; all shares add up to 1. Negative where a correlation makes it relieve. */
  readonly share: number;
}

export interface CombinedUncertainty {
  readonly standardUncertainty: number;
  /** Undefined where no contribution limits them. */
  readonly effectiveDegreesOfFreedom: number | undefined;
  /** Largest share first. */
  readonly shares: readonly ContributionShare[];
}

export const COMBINED_UNCERTAINTY: Formula = {
  id: 'combined-uncertainty',
  title: 'Combined standard uncertainty of a first-order budget',
  equation: 'u² = Σ (c u)² + 2 Σ c(i) c(j) u(i) u(j) r(i,j)',
  source: 'JCGM 100:2008, eq. 10, 13 and 16',
  validity: [],
};

/**
 * Combines contributions to the standard uncertainty of the result, its effective degrees of freedom and the shares.
 *
 * JCGM 100 eq. 13 and 16. Coefficients that contradict each other could make the variance negative: it is then 0. The
 * degrees of freedom follow Welch and Satterthwaite (eq. G.2b), which supposes uncorrelated contributions.
 *
 * Worked value (JCGM 100 H.1, first order): 25, 9.7, 2.9 and 16.7 nm give 32 nm and 16 degrees of freedom.
 */
export function combineContributions(
  contributions: readonly Contribution[],
  correlations: readonly Correlation[] = [],
): CombinedUncertainty {
  const signed = contributions.map((each) => each.sensitivity * each.standardUncertainty);
  const parts = signed.map((uncertainty) => uncertainty * uncertainty);
  for (const { between, coefficient } of correlations) {
    const [i, j] = between.map((name) => contributions.findIndex((each) => each.name === name));
    const cross = coefficient * (signed[i ?? -1] ?? 0) * (signed[j ?? -1] ?? 0);
    for (const index of [i, j]) if (index !== undefined && index in parts) parts[index] = (parts[index] ?? 0) + cross;
  }
  const variance = Math.max(
    0,
    parts.reduce((sum, part) => sum + part, 0),
  );
  const standardUncertainty = Math.sqrt(variance);
  const shares = contributions.map((contribution, i) => ({
    contribution,
    resultUncertainty: Math.abs(signed[i] ?? 0),
    share: variance > 0 ? (parts[i] ?? 0) / variance : 0,
  }));
  return {
    standardUncertainty,
    effectiveDegreesOfFreedom: effectiveDegreesOfFreedom(standardUncertainty, shares),
    shares: shares.toSorted((a, b) => b.share - a.share),
  };
}

/** Welch and Satterthwaite, JCGM 100 eq. G.2b, not cut to a whole number. */
function effectiveDegreesOfFreedom(
  standardUncertainty: number,
  shares: readonly ContributionShare[],
): number | undefined {
  // As powers of the ratio to the whole, so that small uncertainties do not underflow in the fourth power.
  const limiting = shares.reduce((sum, { contribution, resultUncertainty }) => {
    const { degreesOfFreedom } = contribution;
    if (degreesOfFreedom === undefined || standardUncertainty === 0) return sum;
    return sum + (resultUncertainty / standardUncertainty) ** 4 / degreesOfFreedom;
  }, 0);
  return limiting > 0 ? 1 / limiting : undefined;
}
