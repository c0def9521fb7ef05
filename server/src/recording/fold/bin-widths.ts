/** How finely each quantity is told apart in a recording's distributions: finer than any sensor of the trade. */
import type { BoundedQuantity } from '../../evaluate/recorded/summary.ts';

/** Canonical: °C and K, fractions, kg/kg, m/s. */
export const BIN_WIDTHS: Readonly<Record<BoundedQuantity, number>> = {
  'air-temperature': 0.05,
  'relative-humidity': 0.001,
  'dew-point': 0.05,
  'dew-point-depression': 0.05,
  'mixing-ratio': 1e-4,
  speed: 0.01,
};
