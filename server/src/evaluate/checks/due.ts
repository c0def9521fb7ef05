/** When the next check of a point is due. */
import { remembered } from '../../base/remembered.ts';
import type { Located } from '../../model/located.ts';
import type { CalendarDate, Checks } from '../../model/model-types.generated.ts';
import type { Formula } from '../../physics/formula.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import type { Origin } from '../../syntax/nodes.ts';
import { DAY_SECONDS, dayAfter, secondsBetween } from '../facts/calendar.ts';
import type { FactInput } from '../facts/fact.ts';
import { quantityInput } from '../facts/inputs.ts';
import { figureBound, limit } from '../facts/limit.ts';
import { pointFact } from '../resolved/point-fact.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';

/** The next check and how far off it is. */
export interface CheckDue {
  readonly last: LastCheck;
  readonly due: CalendarDate;
  readonly interval: Located<Quantity>;
}

export interface LastCheck {
  readonly date: CalendarDate;
  readonly origin: Origin;
  /** The visit file that tells of it; absent where the plan of the point does. */
  readonly file?: string;
}

const CALENDAR_TIME: Formula = {
  id: 'fixed-interval',
  title: 'Fixed calendar time between checks',
  source: 'ILAC-G24 / OIML D 10, calendar time; the interval is the author’s own',
  validity: [],
};

/** Undefined where no last check or no interval is given. */
export const checkDue = remembered((resolved: ResolvedPoint): CheckDue | undefined => {
  const { interval }: Checks = resolved.point.checks?.value ?? {};
  const last = lastCheck(resolved);
  const due = last === undefined || interval === undefined ? undefined : dayAfter(last.date, interval.value);
  if (last === undefined || interval === undefined || due === undefined) return undefined;
  return { last, due, interval };
});

export const timeToCheck = pointFact('check/time-left', {
  title: (point) => `time until the next check, due on ${checkDue(point)?.due}`,
  dimension: 'time',
  compute: (point) => {
    const next = checkDue(point);
    if (next === undefined) return undefined;
    const { today } = point.settings;
    return {
      value: secondsBetween(today, next.due),
      derivation: () => ({
        inputs: [
          lastCheckInput(next.last),
          ...quantityInput('interval', next.interval),
          { label: 'today', text: today },
        ],
        relation: 'last check + interval − today, by the calendar',
        formulas: [CALENDAR_TIME],
      }),
    };
  },
});

/** Of the day that the plan gives and the visits on which the point was compared with a reference, the latest. */
function lastCheck({ point, readings }: ResolvedPoint): LastCheck | undefined {
  const planned = point.checks?.value.last;
  const visited = readings.at(-1);
  if (visited !== undefined && (planned === undefined || visited.date > planned.value)) {
    return { date: visited.date, origin: visited.origin, file: visited.file };
  }
  return planned === undefined ? undefined : { date: planned.value, origin: planned.origin };
}

export function lastCheckInput({ date, origin, file }: LastCheck): FactInput {
  return { label: 'last check', text: date, origin, ...(file === undefined ? {} : { file }) };
}

/** From so many days ahead on somebody is told of a check. Common practice, no source. */
const DAYS_AHEAD = 30;

/** Broken where it is time to plan the next check. */
export const checkFarAhead = limit(timeToCheck, 'above', (_: ResolvedPoint) =>
  figureBound(DAYS_AHEAD * DAY_SECONDS, 'time'),
);

export const checkNotOverdue = limit(timeToCheck, 'at least', (_: ResolvedPoint) => figureBound(0, 'time'));
