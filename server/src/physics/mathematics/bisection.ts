/** Bisection, for conditions that have no slope which Newton's steps could follow. */

/** Of the bracket: leaves 1e-12 of it. */
const HALVINGS = 40;

/**
 * The place up to which a condition holds, to 1e-12 of the bracket.
 *
 * Worked value (by hand): x² < 2 holds from 0 up to 1.414213562.
 *
 * @param holds true from `low` up to the place that is looked for, false from there up to `high`
 */
export function endOf(holds: (place: number) => boolean, low: number, high: number): number {
  let [last, first] = [low, high];
  for (let halvings = 0; halvings < HALVINGS; halvings++) {
    const middle = (last + first) / 2;
    if (holds(middle)) last = middle;
    else first = middle;
  }
  return (last + first) / 2;
}
