/** Root finding for functions that rise through zero once: Newton's steps inside a bracket that only shrinks. */

/** A function's value and slope at one place. */
export interface Tangent {
  readonly value: number;
  readonly slope: number;
}

/** Enough for bisection alone to go from 500 K to the spacing of double numbers. */
const MOST_STEPS = 64;

/**
 * The place where a continuous rising function passes zero, between `low` and `high`. Where the function has one sign
 * over the whole bracket the end nearest to zero is returned. A Newton step that leaves the bracket, or that a flat
 * slope makes meaningless, is replaced by bisection, so that the search cannot diverge. It stops after a Newton step
 * smaller than `smallestStep`, in the unit of the argument (Newton converges quadratically, so the error left is far
 * smaller than that step), or after as many steps as bisection alone needs.
 */
export function risingRoot(
  tangentAt: (place: number) => Tangent,
  low: number,
  high: number,
  start: number,
  smallestStep: number,
): number {
  let below = low;
  let above = high;
  let place = Math.min(Math.max(start, low), high);
  for (let steps = 0; steps < MOST_STEPS; steps++) {
    const { value, slope } = tangentAt(place);
    if (value < 0) below = place;
    else above = place;
    const newton = place - value / slope;
    const isInside = newton >= below && newton <= above;
    if (isInside && Math.abs(newton - place) <= smallestStep) return newton;
    place = isInside ? newton : (below + above) / 2;
  }
  return place;
}
