/** Comparing what was computed with a limit that somebody wrote. */

/**
 * By this part of a limit, or of 1 where that is more, rounding may carry a computed number over it: 0.16 × 935.2 / 935.2
 * is not 0.16.
 */
const ROUNDING = 1e-9;

/** True where a number lies above a limit by more than rounding explains. What is at its limit does not exceed it. */
export function exceeds(value: number, limit: number): boolean {
  return value - limit > ROUNDING * Math.max(1, Math.abs(limit));
}
