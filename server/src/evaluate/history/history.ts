/** How a point has held against its references over the years: the errors found, their drift, and what follows from it. */
import type { Outcome } from '../../base/outcome.ts';
import { remembered } from '../../base/remembered.ts';
import type { Located } from '../../model/located.ts';
import type { QuantityName } from '../../quantity/quantities.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import { preparedReport } from '../budget/uncertainty.ts';
import { checkDue } from '../checks/due.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { type Drift, driftOf, type ToleranceReached, toleranceReached } from './drift-forecast.ts';
import { checkedVisits, presentSegment } from './drift-segment.ts';
import { heaterUntold } from './heater-untold.ts';
import { type ProposedCheck, proposedCheck } from './proposed-check.ts';
import { type ReadingError, readingError } from './reading-error.ts';

export interface History {
  readonly quantity: QuantityName;
  /** Of the quantity's report. */
  readonly tolerance: Located<Quantity> | undefined;
  /** The oldest first; at least one. Those that leave the heater open go into nothing below. */
  readonly errors: readonly ReadingError[];
  /** Or in words, without their stop, why there is none. */
  readonly drift: Outcome<Drift, string>;
  /** Undefined without a drift or a tolerance. */
  readonly reached: ToleranceReached | undefined;
  /** Or in words why there is none. */
  readonly proposed: Outcome<ProposedCheck, string>;
}

/** The histories of all quantities that were read at a point. */
export const historiesOf = remembered((point: ResolvedPoint): ReadonlyMap<QuantityName, History> => {
  const quantities = new Set(point.readings.map(({ quantity }) => quantity));
  return new Map([...quantities].map((quantity) => [quantity, historyOf(point, quantity)]));
});

function historyOf(point: ResolvedPoint, quantity: QuantityName): History {
  const { readings, reports, settings } = point;
  const tolerance = reports.find((each) => each.quantity === quantity)?.report.value.tolerance;
  const permitted = tolerance?.value.value;
  const budgets = preparedReport(point, quantity);
  const errors = readings
    .filter((reading) => reading.quantity === quantity)
    .map((reading) => readingError(reading, budgets, settings));
  const visits = checkedVisits(errors.filter(({ reading }) => !heaterUntold(reading, point)));
  const drift = driftOf(presentSegment(visits), settings.coverage.value);
  const reached = drift.ok && permitted !== undefined ? toleranceReached(drift.value, permitted) : undefined;
  const proposed = proposedCheck(visits, drift, permitted, checkDue(point));
  return { quantity, tolerance, errors, drift, reached, proposed };
}

/** Of the checks that the histories of a point propose, the first. */
export function firstProposed(
  histories: ReadonlyMap<QuantityName, History>,
): { readonly history: History; readonly proposed: ProposedCheck } | undefined {
  return [...histories.values()]
    .flatMap((history) => (history.proposed.ok ? [{ history, proposed: history.proposed.value }] : []))
    .toSorted((one, other) => one.proposed.date.localeCompare(other.proposed.date))[0];
}
