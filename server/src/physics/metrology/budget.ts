/** An uncertainty budget after the GUM (JCGM 100:2008): contributions, their combination, and what each share is. */
import type { Formula } from '../formula.ts';

export interface Contribution {
  readonly name: string;
  /** In the input's own unit. */
  readonly standardUncertainty: number;
  /** Of the result, per unit of the input. */
  readonly sensitivity: number;
}

export interface ContributionShare<Of extends Contribution> {
  readonly contribution: Of;
  /** |c|·u in the unit of the result. */
  readonly resultUncertainty: number;
  /** Part of the variance of the result; all shares add up to 1. */
  readonly share: number;
}

export interface CombinedUncertainty<Of extends Contribution> {
  readonly standardUncertainty: number;
  /** Largest share first. */
  readonly shares: readonly ContributionShare<Of>[];
}

/** u² = Σ (c u)², inputs uncorrelated */
export const COMBINED_UNCERTAINTY: Formula = {
  id: 'combined-uncertainty',
  title: 'Combined standard uncertainty of a first-order budget',
  source: 'JCGM 100:2008, eq. 10',
  validity: [],
};

/**
 * Combines uncorrelated contributions to the standard uncertainty of the result, and says what share each has.
 *
 * u² = Σ (c·u)², JCGM 100:2008 eq. 10.
 *
 * Worked value (JCGM 100 H.1, first order): 25, 9.7, 2.9 and 16.7 nm give 32 nm.
 */
export function combineContributions<Of extends Contribution>(contributions: readonly Of[]): CombinedUncertainty<Of> {
  const parts = contributions.map((contribution) => {
    const resultUncertainty = Math.abs(contribution.sensitivity * contribution.standardUncertainty);
    return { contribution, resultUncertainty, variance: resultUncertainty * resultUncertainty };
  });
  const whole = parts.reduce((sum, { variance }) => sum + variance, 0);
  const shares = parts.map(({ variance, ...part }) => ({ ...part, share: whole > 0 ? variance / whole : 0 }));
  return { standardUncertainty: Math.sqrt(whole), shares: shares.toSorted((a, b) => b.share - a.share) };
}
