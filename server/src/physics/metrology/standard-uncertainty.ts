/** Standard uncertainties from what data sheets and certificates state (JCGM 100:2008, 4.3). */

/** What is stated: limits without more, or an expanded uncertainty with its coverage factor. */
export type StatedAs = 'rectangular' | { readonly coverageFactor: number };

/**
 * Standard uncertainty of a stated half-width or expanded uncertainty, in its unit.
 *
 * Rectangular a/√3 (JCGM 100, 4.3.7), expanded U/k (4.3.3).
 *
 * Worked value (JCGM 100, 4.3.7): ±0.05 rectangular gives 0.029.
 *
 * @param halfWidth or expanded uncertainty, 0 or more
 */
export function standardUncertaintyOf(halfWidth: number, statedAs: StatedAs): number {
  return halfWidth / (statedAs === 'rectangular' ? Math.sqrt(3) : statedAs.coverageFactor);
}
