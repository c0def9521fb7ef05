/** When the next check of a point is due. */
import type { CalendarDate, Checks } from '../model/model-types.generated.ts';
import type { Formula } from '../physics/formula.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import { dayAfter, secondsBetween } from './calendar.ts';
import type { Fact } from './fact.ts';
import type { ResolvedPoint } from './point.ts';

/** The next check and how far off it is. */
export interface CheckDue {
  readonly due: CalendarDate;
  readonly fact: Fact;
}

const CALENDAR_TIME: Formula = {
  id: 'fixed-interval',
  title: 'Fixed calendar time between checks',
  equation: 'next = last + interval',
  source: 'ILAC-G24 / OIML D 10, calendar time; the interval is the author’s own',
  validity: [],
};

/** Undefined where no last check or no interval is given. */
export function checkDue({ point, settings }: ResolvedPoint): CheckDue | undefined {
  const { last, interval }: Checks = point.checks?.value ?? {};
  const due = last === undefined || interval === undefined ? undefined : dayAfter(last.value, interval.value);
  if (last === undefined || interval === undefined || due === undefined) return undefined;
  const fact: Fact = {
    id: 'check/time-left',
    title: `time until the next check, due on ${due}`,
    dimension: 'time',
    value: secondsBetween(settings.today, due),
    inputs: [
      { label: 'last check', text: last.value, origin: last.origin },
      { label: 'interval', text: showQuantity(interval.value.value, 'time'), origin: interval.origin },
      { label: 'today', text: settings.today },
    ],
    relation: 'last check + interval − today, by the calendar',
    formulas: [CALENDAR_TIME],
    notes: [],
  };
  return { due, fact };
}
