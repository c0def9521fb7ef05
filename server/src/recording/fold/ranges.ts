/** The envelope that a log supports: the ends and the 0.5 % and 99.5 % quantiles of every quantity. */
import type { BoundedQuantity, RecordedRange } from '../../evaluate/recorded/summary.ts';
import { BIN_WIDTHS } from './bin-widths.ts';
import { histogram } from './histogram.ts';

export interface RangeCount {
  add(value: number, seconds: number): void;
  finish(): RecordedRange | undefined;
}

export function countRange(quantity: BoundedQuantity): RangeCount {
  const distribution = histogram(BIN_WIDTHS[quantity]);
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  return {
    add(value, seconds) {
      distribution.add(value, seconds);
      lowest = Math.min(lowest, value);
      highest = Math.max(highest, value);
    },
    finish() {
      const low = distribution.quantile(0.005);
      const high = distribution.quantile(0.995);
      if (low === undefined || high === undefined) return undefined;
      return { lowest, highest, low: Math.max(low, lowest), high: Math.min(high, highest) };
    },
  };
}
