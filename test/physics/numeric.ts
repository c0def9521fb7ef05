/** Small numeric measures that the physics tests share. */

/** Relative difference of a value from what is expected. */
export function relativeDifference(value: number, expected: number): number {
  return Math.abs(value - expected) / Math.abs(expected);
}

/** Central difference of a function of one number. */
export function centralDifference(of: (place: number) => number, at: number, step: number): number {
  return (of(at + step) - of(at - step)) / (2 * step);
}

/** Numbers from low to high, both included, in steps. */
export function steps(low: number, high: number, step: number): readonly number[] {
  return Array.from({ length: Math.round((high - low) / step) + 1 }, (_, index) => low + index * step);
}
