/** Standard uncertainties from what data sheets and certificates state (JCGM 100:2008, 4.3). */

/** What a stated limit or uncertainty is: limits without more, a coverage factor, or a distribution. */
export type StatedAs = 'rectangular' | 'triangular' | 'arcsine' | { readonly coverageFactor: number };

/**
 * Standard uncertainty of a stated half-width or expanded uncertainty, in its unit.
 *
 * Rectangular a/√3 (JCGM 100, 4.3.7), triangular a/√6 (4.3.9), arcsine a/√2 (JCGM 101, 6.4.6), expanded U/k (4.3.3).
 *
 * Worked value (JCGM 100, 4.3.7): ±0.05 rectangular gives 0.029.
 *
 * @param halfWidth or expanded uncertainty, 0 or more
 */
export function standardUncertaintyOf(halfWidth: number, statedAs: StatedAs): number {
  switch (statedAs) {
    case 'rectangular':
      return halfWidth / Math.sqrt(3);
    case 'triangular':
      return halfWidth / Math.sqrt(6);
    case 'arcsine':
      return halfWidth / Math.sqrt(2);
    default:
      return halfWidth / statedAs.coverageFactor;
  }
}
