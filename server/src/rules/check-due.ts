import { isKnown } from '../evaluate/fact.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import type { FindingDraft, Rule } from './rule.ts';

const DAYS_AHEAD = 30;
const DAY_SECONDS = 86_400;

export const rule: Rule = {
  name: 'check-due',
  group: 'Uncertainty and checks',
  severity: 'warning',
  title: 'The next check of a point is due within 30 days, or is overdue.',
  why: 'The uncertainties of the point count the drift of one interval. Past that they are too small, and grow by the day.',
  mend: 'Check the point, and write the day down.',
  leavesAlone: 'Plans without a last check: nothing says when the next one is due.',
  sources: ['ILAC-G24 / OIML D 10, calendar time', '30 days ahead: common practice, no source'],
  facts: ['check/time-left'],
  fixes: [],
  check: { point: due },
};

function due({ checkPlan, point }: PointEvaluation): readonly FindingDraft[] {
  const next = checkPlan.due;
  const { last, interval } = point.checks?.value ?? {};
  if (next === undefined || !isKnown(next.fact) || last === undefined || interval === undefined) return [];
  if (next.fact.value > DAYS_AHEAD * DAY_SECONDS) return [];
  const every = showQuantity(interval.value.value, interval.value.dimension);
  const message =
    next.fact.value < 0
      ? `The check of this point was due on ${next.due}, ${every} after that of ${last.value}: from then on its drift is more than its uncertainties count.`
      : `The check of this point is due on ${next.due}, ${every} after that of ${last.value}. Plan it, and write the day down once it is made.`;
  return [{ message, origin: last.origin, facts: [next.fact] }];
}
