/** What the rules of alarms look at and how they speak of it. */

import type { Span } from '../../base/span.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import type { AlarmUse } from '../../evaluate/resolved/alarm-use.ts';
import type { SignalUse } from '../../evaluate/resolved/signal-use.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';

/** `above 95 %RH` */
export function limitWords({ direction, limit }: AlarmUse): string {
  return `${direction} ${showQuantity(limit.value.value, limit.value.dimension)}`;
}

type Carrier = SignalUse & { readonly carries: Span };

/** The signals of the alarm's quantity, where none carries its limit; undefined where one does or may. */
export function carriersShortOf(
  { signals }: PointEvaluation,
  { quantity, limit }: AlarmUse,
): readonly Carrier[] | undefined {
  const carriers = signals.filter((use) => use.quantity === quantity);
  const short = carriers.filter((use): use is Carrier => {
    const { carries } = use;
    return carries !== undefined && (limit.value.value < carries.low || limit.value.value > carries.high);
  });
  return short.length > 0 && short.length === carriers.length ? short : undefined;
}
