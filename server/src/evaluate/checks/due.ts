/** When the next check of a point is due. */
import type { CalendarDate, Checks } from '../../model/model-types.generated.ts';
import type { Formula } from '../../physics/formula.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { Origin } from '../../syntax/nodes.ts';
import { dayAfter, secondsBetween } from '../facts/calendar.ts';
import type { Fact, FactInput } from '../facts/fact.ts';
import type { ResolvedPoint } from '../point.ts';

/** The next check and how far off it is. */
export interface CheckDue {
  readonly last: LastCheck;
  readonly due: CalendarDate;
  readonly fact: Fact;
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
export function checkDue(resolved: ResolvedPoint): CheckDue | undefined {
  const { interval }: Checks = resolved.point.checks?.value ?? {};
  const last = lastCheck(resolved);
  const due = last === undefined || interval === undefined ? undefined : dayAfter(last.date, interval.value);
  if (last === undefined || interval === undefined || due === undefined) return undefined;
  const { today } = resolved.settings;
  const fact: Fact = {
    id: 'check/time-left',
    title: `time until the next check, due on ${due}`,
    dimension: 'time',
    value: secondsBetween(today, due),
    inputs: [
      lastCheckInput(last),
      { label: 'interval', text: showQuantity(interval.value.value, 'time'), origin: interval.origin },
      { label: 'today', text: today },
    ],
    relation: 'last check + interval − today, by the calendar',
    formulas: [CALENDAR_TIME],
    notes: [],
  };
  return { last, due, fact };
}

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
