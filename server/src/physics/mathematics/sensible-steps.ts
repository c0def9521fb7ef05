/** What a person would choose instead of a computed number: the next size sold, the next round figure. */

/** Thicknesses that insulation is sold in, m, the thinnest first. Common practice, no source. */
export const INSULATION_THICKNESSES: readonly number[] = [
  0.005, 0.01, 0.013, 0.019, 0.02, 0.025, 0.03, 0.04, 0.05, 0.06, 0.08, 0.1, 0.12, 0.15, 0.2,
];

/** m */
export const INSERTION_STEP = 0.01;
export const SPACING_STEP = 0.01;

/** How far beyond a step, as a part of it, a number may lie by rounding error alone and still be that step. */
const STEP_ROUNDING = 1e-9;

/** The least multiple of `step` that is no less than the value: 0.301 up to steps of 0.1 is 0.4. */
export function roundUpToStep(value: number, step: number): number {
  return multipleOf(step, Math.ceil(value / step - STEP_ROUNDING));
}

/** The greatest multiple of `step` that is no more than the value: 0.301 down to steps of 0.1 is 0.3. */
export function roundDownToStep(value: number, step: number): number {
  return multipleOf(step, Math.floor(value / step + STEP_ROUNDING));
}

/** The insulation to buy, m, where `thickness` is needed, undefined where none is sold that thick: 20.2 mm needs 25 mm. */
export function insulationToBuy(thickness: number): number | undefined {
  return INSULATION_THICKNESSES.find((sold) => sold >= thickness * (1 - STEP_ROUNDING));
}

/** The insertion to drill for, m: the next 10 mm up, as 80 mm for 72.9 mm. */
export function sensibleInsertion(insertion: number): number {
  return roundUpToStep(insertion, INSERTION_STEP);
}

/** The spacing to mount at, m: the next 10 mm up where probes are too close, down where they are too far apart. */
export function sensibleSpacing(spacing: number, direction: 'up' | 'down'): number {
  return direction === 'up' ? roundUpToStep(spacing, SPACING_STEP) : roundDownToStep(spacing, SPACING_STEP);
}

/** The rise to set, K: the next 0.5 K up below 5 K, the next 1 K up from there, as 3.5 K for 3.2 K and 9 K for 8.1 K. */
export function sensibleRise(rise: number): number {
  return roundUpToStep(rise, rise < 5 ? 0.5 : 1);
}

/**
 * The span to set around a range: both ends moved outwards to multiples of a step of 1, 2 or 5 times a power of ten.
 * The step is the largest of those that is no more than a fifth of the range, so that little of the span is lost.
 *
 * A range without width stays as it is.
 *
 * Worked value (by hand): 37.3 to 88.1 gives steps of 10: 30 to 90.
 */
export function sensibleSpan(low: number, high: number): { readonly low: number; readonly high: number } {
  if (!(high > low)) return { low, high };
  const step = roundStepBelow((high - low) / 5);
  return { low: roundDownToStep(low, step), high: roundUpToStep(high, step) };
}

/** The largest of 1, 2 or 5 times a power of ten that is no more than `size`, which is above 0: 5 for 9.99. */
export function roundStepBelow(size: number): number {
  const exponent = Math.floor(Math.log10(size) + STEP_ROUNDING);
  const mantissa = size / 10 ** exponent;
  const leading = mantissa >= 5 - STEP_ROUNDING ? 5 : mantissa >= 2 - STEP_ROUNDING ? 2 : 1;
  return multipleOf(10 ** exponent, leading);
}

/** Without the binary dust of the product: 3 × 0.1 is 0.3. */
function multipleOf(step: number, count: number): number {
  return Number((step * count).toPrecision(12));
}
