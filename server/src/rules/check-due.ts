import { checkFarAhead, checkNotOverdue, timeToCheck } from '../evaluate/checks/due.ts';
import { broken } from '../evaluate/facts/limit.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import type { FindingDraft, Rule } from './rule.ts';
import { lastVisitIs } from './support/last-visit.ts';

export const rule: Rule = {
  name: 'check-due',
  group: 'Uncertainty and checks',
  severity: 'warning',
  title: 'The next check of a point is due within 30 days, or is overdue.',
  why: 'The uncertainties of the point count the drift of one interval. Past that they are too small, and grow by the day.',
  mend: 'Check the point, and write the readings of the visit down, or at least its day.',
  leavesAlone:
    'Plans without a last check, where no visit has readings of the point: nothing says when the next one is due.',
  sources: ['ILAC-G24 / OIML D 10, calendar time', '30 days ahead: common practice, no source'],
  facts: [timeToCheck],
  fixes: [],
  check: { point: due },
};

function due(view: PointEvaluation): readonly FindingDraft[] {
  const next = view.checkPlan.due;
  const interval = view.point.checks?.value.interval;
  const left = broken(checkFarAhead, view)?.fact;
  if (next === undefined || left === undefined || interval === undefined) return [];
  const every = showQuantity(interval.value.value, interval.value.dimension);
  const { last } = next;
  const message = () =>
    broken(checkNotOverdue, view) !== undefined
      ? `The check of this point was due on ${next.due}, ${every} after that of ${last.date}: from then on it may have drifted further than its uncertainties allow for. Check it, and write the day down.`
      : `The check of this point is due on ${next.due}, ${every} after that of ${last.date}. Plan it, and write the day down once it is made.`;
  const origin = last.file === undefined ? last.origin : interval.origin;
  return [{ message, origin, facts: [left], related: () => lastVisitIs(next) }];
}
