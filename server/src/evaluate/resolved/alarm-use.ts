/** The alarms of a point as they are written: direction, limit, hysteresis. */
import { remembered } from '../../base/remembered.ts';
import type { Located } from '../../model/located.ts';
import type { Alarm } from '../../model/model-types.generated.ts';
import type { AlarmDirection } from '../../physics/metrology/alarm.ts';
import type { QuantityName } from '../../quantity/quantities.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import { isUnread } from '../facts/unread.ts';
import type { ResolvedPoint } from './resolved-point.ts';

/** An alarm whose quantity and limit can be read. */
export interface AlarmUse {
  readonly name: string;
  readonly located: Located<Alarm>;
  readonly quantity: QuantityName;
  readonly direction: AlarmDirection;
  readonly limit: Located<Quantity>;
  readonly clear: Located<Quantity> | undefined;
  /** Inwards of the limit, in the difference of the quantity; 0 where no `clear` is given, undefined where it is unreadable. */
  readonly hysteresis: number | undefined;
}

export const alarmUses = remembered(({ point }: ResolvedPoint): readonly AlarmUse[] =>
  [...(point.alarms?.value ?? [])].flatMap(([name, located]): AlarmUse[] => {
    const { quantity, above, below, clear } = located.value;
    const limit = above ?? below;
    if (quantity === undefined || limit === undefined || (above !== undefined && below !== undefined)) return [];
    const direction = above === undefined ? 'below' : 'above';
    const hysteresis = isUnread(located, 'clear', clear) ? undefined : hysteresisOf(direction, limit, clear);
    return [{ name, located, quantity: quantity.value, direction, limit, clear, hysteresis }];
  }),
);

function hysteresisOf(
  direction: AlarmDirection,
  limit: Located<Quantity>,
  clear: Located<Quantity> | undefined,
): number {
  if (clear === undefined) return 0;
  const inwards = limit.value.value - clear.value.value;
  return direction === 'above' ? inwards : -inwards;
}
