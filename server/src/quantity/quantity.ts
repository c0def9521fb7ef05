import type { Dimension, Unit } from './dimension.ts';

/** A value as read from a file. */
export interface Quantity {
  readonly dimension: Dimension;
  /** In the canonical unit of the dimension. A gauge pressure is still relative to the air pressure here. */
  readonly value: number;
  /** The unit as the author chose it. */
  readonly unit: Unit;
  /** True for a pressure written with `(g)`: against the air pressure of the site. */
  readonly gauge: boolean;
}

/** `LOW .. HIGH UNIT`, low not above high, both canonical; a single value is a range of no width. */
export interface QuantityRange {
  readonly dimension: Dimension;
  readonly low: number;
  readonly high: number;
  readonly unit: Unit;
  readonly gauge: boolean;
}

/** Calendar months of a time written in months or years, or undefined for a time in seconds, hours, days. */
export function calendarMonths(quantity: Quantity): number | undefined {
  if (quantity.unit.months === undefined) return undefined;
  return Math.round((quantity.value / quantity.unit.factor) * quantity.unit.months);
}
