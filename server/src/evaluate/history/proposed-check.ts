/**
 * When a point should be checked next, by what its visits found. Where a drift can be fitted, the variables-data method
 * says how long the error stays within the tolerance; before that, the test-interval method says whether the planned
 * interval has stood the test. Both start from the planned interval and at most double it.
 */
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import type { CalendarDate } from '../../model/model-types.generated.ts';
import type { Formula } from '../../physics/formula.ts';
import {
  LARGEST_CHANGE,
  TEST_INTERVAL_METHOD,
  testedInterval,
  VARIABLES_DATA_METHOD,
} from '../../physics/metrology/calibration-interval.ts';
import { showQuantity, showRange } from '../../quantity/format-quantity.ts';
import type { CheckDue } from '../checks/due.ts';
import { daysAfter, daysBetween } from '../facts/calendar.ts';
import { CONFIDENCE, type Drift, daysWithin } from './drift-forecast.ts';
import type { CheckedVisit } from './drift-segment.ts';

export interface ProposedCheck {
  /** The day of the last visit where the check cannot wait. */
  readonly date: CalendarDate;
  readonly isAtOnce: boolean;
  /** As words name it: 'variables-data'. */
  readonly method: string;
  readonly formula: Formula;
  readonly notes: readonly string[];
}

/** Share of checks that should find the point within its tolerance. Common practice, no source. */
const TARGET = 0.95;

/** From which confidence on a record changes the interval. Common practice, no source. */
const CONFIDENCE_TO_CHANGE = 0.5;

export function proposedCheck(
  visits: readonly CheckedVisit[],
  drift: Outcome<Drift, string>,
  tolerance: number | undefined,
  planned: CheckDue | undefined,
): Outcome<ProposedCheck, string> {
  if (tolerance === undefined) return fail('the report has no tolerance');
  if (planned === undefined) return fail('no interval of checks is planned');
  const byDrift = drift.ok ? checkByDrift(drift.value, tolerance, planned) : drift;
  return byDrift.ok ? byDrift : checkByRecord(visits, tolerance, planned, byDrift.problem);
}

function checkByDrift(drift: Drift, tolerance: number, { last, due }: CheckDue): Outcome<ProposedCheck, string> {
  const longest = LARGEST_CHANGE * daysBetween(last.date, due);
  const days = daysWithin(drift, tolerance, drift.k, longest);
  if (days === 0 && !drift.isSignificant)
    return fail('at the last visit the error may already lie beyond the tolerance, and no drift stands out from that');
  const date = daysAfter(drift.segment.last, days ?? longest);
  if (date === undefined) return fail('the calendar ends before it');
  const confidence = showQuantity(CONFIDENCE, 'percentage');
  const note =
    days === undefined
      ? 'The error stays within the tolerance for longer; an interval is at most doubled in one step.'
      : days === 0
        ? `At the last visit the drifting error can no longer be said to lie within the tolerance with a confidence of ${confidence}.`
        : `Until then the error stays within the tolerance with a confidence of ${confidence}.`;
  const formula = VARIABLES_DATA_METHOD;
  return succeed({ date, isAtOnce: days === 0, method: 'variables-data', formula, notes: [note] });
}

function checkByRecord(
  visits: readonly CheckedVisit[],
  tolerance: number,
  { last, due }: CheckDue,
  insteadOf: string,
): Outcome<ProposedCheck, string> {
  const found = visits.filter(({ asFound }) => asFound.length > 0);
  if (found.length === 0) return fail('no visit has found an error since the point was put into service');
  const within = found.filter(({ asFound }) => asFound.every(({ error }) => Math.abs(error) <= tolerance));
  const record = { interval: daysBetween(last.date, due), inTolerance: within.length, checks: found.length };
  const { interval, observed, rejectionConfidence } = testedInterval(record, TARGET, CONFIDENCE_TO_CHANGE);
  const date = daysAfter(last.date, interval);
  if (date === undefined) return fail('the calendar ends before it');
  const [target, rejected] = [TARGET, rejectionConfidence].map((share) => showQuantity(share, 'percentage'));
  const notes = [
    `${within.length} of ${found.length} ${found.length === 1 ? 'check' : 'checks'} found the error within the tolerance, which fits a share of ${showRange(observed.low, observed.high, 'percentage')}; that it differs from the target of ${target} has a confidence of ${rejected}.`,
    `The variables-data method says nothing: ${insteadOf}.`,
  ];
  return succeed({ date, isAtOnce: false, method: 'test-interval', formula: TEST_INTERVAL_METHOD, notes });
}
