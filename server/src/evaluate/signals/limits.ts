/** What signals have to carry and to resolve, and what alarms have to stand. */
import { SATURATED } from '../../physics/air/state.ts';
import { type QuantityName, quantityInfo } from '../../quantity/quantities.ts';
import { boundIf, endBound, figureBound, type Limit, limit, partBound, writtenBound } from '../facts/limit.ts';
import type { AlarmUse } from '../resolved/alarm-use.ts';
import { highestReported, lowestReported } from '../resolved/report-range.ts';
import { type ResolvedPoint, toleranceOf } from '../resolved/resolved-point.ts';
import type { AnalogueUse, RegisterUse, SignalUse } from '../resolved/signal-use.ts';
import { depressionAtLimit } from './alarm-depression.ts';
import { leastHysteresis, uncertaintyNearLimit } from './alarm-facts.ts';
import { resolutionError, spanUsed } from './signal-facts.ts';

/** Of a tolerance, what its resolution may cost. */
export const RESOLUTION_SHARE = 0.1;

/** Of the span, what the envelope should use at the least. */
const LEAST_SPAN_USED = 0.25;

export function resolutionLimit({ name, quantity }: SignalUse): Limit<ResolvedPoint> {
  return limit(resolutionError(name), 'at most', (point) =>
    boundIf(toleranceOf(point, quantity), (tolerance) => partBound(tolerance, RESOLUTION_SHARE, 'a tenth of')),
  );
}

export function spanUseLimit({ name }: SignalUse): Limit<ResolvedPoint> {
  return limit(spanUsed(name), 'at least', () => figureBound(LEAST_SPAN_USED, 'percentage'));
}

/** The high end of a span. */
export function spanTop({ quantity, span }: AnalogueUse): Limit<ResolvedPoint> {
  return limit(highestReported(quantity), 'at most', () => boundIf(span, (ends) => endBound(ends, 'high')));
}

/** The largest value that a register holds. */
export function registerTop({ quantity, carries }: RegisterUse): Limit<ResolvedPoint> {
  const { dimension } = quantityInfo(quantity);
  return limit(highestReported(quantity), 'at most', () =>
    boundIf(carries, ({ high }) => figureBound(high, dimension)),
  );
}

/** Broken where noise alone sounds the alarm again and again. */
export function hysteresisLimit({ name, quantity, hysteresis }: AlarmUse): Limit<ResolvedPoint> {
  const { difference } = quantityInfo(quantity);
  return limit(leastHysteresis(name), 'at most', () => boundIf(hysteresis, (given) => figureBound(given, difference)));
}

/** The limit of an alarm has to lie between the ends of what the envelope makes of its quantity. */
export function alarmUnderHighest(alarm: AlarmUse): Limit<ResolvedPoint> {
  return limit(highestReported(alarm.quantity), 'above', () => writtenBound(alarm.limit));
}

export function alarmOverLowest(alarm: AlarmUse): Limit<ResolvedPoint> {
  return limit(lowestReported(alarm.quantity), 'below', () => writtenBound(alarm.limit));
}

/** An alarm of relative humidity has to be told from saturated air; one beyond it never sounds in any case. */
export function alarmBelowSaturation({ name, limit: set }: AlarmUse): Limit<ResolvedPoint> {
  const distance = SATURATED - set.value.value;
  return limit(uncertaintyNearLimit(name), 'at most', () =>
    distance < 0 ? undefined : figureBound(distance, 'relative-humidity'),
  );
}

/** As long as an alarm is less certain than its report is allowed to be, that is what has to be mended. */
export function alarmTolerance({ name, quantity }: AlarmUse): Limit<ResolvedPoint> {
  return limit(uncertaintyNearLimit(name), 'at most', (point) => boundIf(toleranceOf(point, quantity), writtenBound));
}

/** A depression of nothing is no limit that an alarm could watch. */
export function someDepression({ name }: AlarmUse): Limit<ResolvedPoint> {
  return limit(depressionAtLimit(name), 'above', () => figureBound(0, 'temperature-difference'));
}

/** A relative humidity has to be told from saturated air. @param uncertainty in the same air */
export function belowSaturation(quantity: QuantityName, uncertainty: number): Limit<ResolvedPoint> {
  return limit(highestReported(quantity), 'at most', () => figureBound(SATURATED - uncertainty, 'relative-humidity'));
}
