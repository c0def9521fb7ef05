/** Straight scales from values to pixels, and round values to mark on them. */
import { fromUsualUnit, inUsualUnit } from '../evaluate/facts/usual-unit.ts';
import type { Dimension } from '../quantity/dimension.ts';

export interface Scale {
  /** Canonical values at the two ends. */
  readonly low: number;
  readonly high: number;
  /** Where they are drawn. */
  readonly from: number;
  readonly to: number;
}

export function placeOn({ low, high, from, to }: Scale, value: number): number {
  return from + ((value - low) / (high - low)) * (to - from);
}

export function valueAt({ low, high, from, to }: Scale, place: number): number {
  return low + ((place - from) / (to - from)) * (high - low);
}

/**
 * Canonical values that are round in the unit they are usually written in: multiples of the smallest step of 1, 2 or 5
 * of a power of ten that is used no more than `most` times between the ends.
 */
export function ticksBetween(low: number, high: number, dimension: Dimension, most: number): readonly number[] {
  const [from, to] = [inUsualUnit(low, dimension), inUsualUnit(high, dimension)];
  const rough = (to - from) / most;
  if (!(rough > 0)) return [low];
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5].find((factor) => factor * power >= rough) ?? 10);
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, index) => fromUsualUnit((first + index) * step, dimension));
}
