import { isKnown, showFact } from '../evaluate/facts/fact.ts';
import { broken } from '../evaluate/facts/limit.ts';
import { driftInAYear, intervalSuffices, timeToTolerance, toleranceAhead } from '../evaluate/history/facts.ts';
import type { History } from '../evaluate/history/history.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { showQuantity, writeQuantity } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import { replaceScalar } from '../syntax/edit.ts';
import type { FindingDraft, FixDraft, Related, Rule } from './rule.ts';

export const rule: Rule = {
  name: 'drift-ahead',
  group: 'Uncertainty and checks',
  severity: 'warning',
  title: 'The drift fitted through the visits of a point reaches its tolerance before the next check.',
  why: 'From that day on the point reads beyond its tolerance, and nobody notices until the check: what was dried, proved or ripened meanwhile was judged by it.',
  mend: 'Check and adjust the point sooner, or check it at a shorter interval. A sensor that drifts this fast may be dirty or worn.',
  leavesAlone:
    'Drifts that may as well be none at 95 %, and points with fewer than three visits since they were put into service, mended or adjusted unseen. Salt readings that do not say whether the heater worked are not counted.',
  sources: [
    'Weighted least squares as in JCGM 100:2008, H.3',
    'Interval that is proposed: variables data, NASA-HDBK-8739.19-5',
  ],
  facts: [driftInAYear, timeToTolerance],
  fixes: ['choice'],
  check: { point: (view) => [...view.histories.values()].flatMap((history) => ahead(view, history)) },
};

function ahead(view: PointEvaluation, history: History): readonly FindingDraft[] {
  const { quantity, drift, reached, tolerance } = history;
  const next = view.checkPlan.due;
  const [perYear, timeLeft] = [view.facts.get(driftInAYear(quantity)), view.facts.get(timeToTolerance(quantity))];
  if (next === undefined || tolerance === undefined || !drift.ok || !drift.value.isSignificant) return [];
  const expected = reached?.expected;
  if (!isKnown(perYear) || !isKnown(timeLeft) || expected === undefined || expected >= next.due) return [];
  const { title } = quantityInfo(quantity);
  const permitted = showQuantity(tolerance.value.value, tolerance.value.dimension);
  const isReached = broken(toleranceAhead(quantity), view) !== undefined;
  const [reaches, advice] = isReached ? ['reached', 'Check it now.'] : ['reaches', 'Check it sooner.'];
  return [
    {
      message: () =>
        `The ${title} of this point drifts by ${showFact(perYear)} in a year and ${reaches} its tolerance of ${permitted} on ${expected}, before the check due on ${next.due}. ${advice}`,
      origin: view.point.checks?.value.interval?.origin ?? tolerance.origin,
      facts: [perYear],
      related: () => lastReading(history),
      fixes: () => shorterInterval(view),
    },
  ];
}

function lastReading({ errors }: History): readonly Related[] {
  const last = errors.at(-1)?.reading;
  return last === undefined
    ? []
    : [{ message: `The last of ${errors.length} readings, on ${last.date}.`, origin: last.origin, file: last.file }];
}

function shorterInterval(view: PointEvaluation): readonly FixDraft[] {
  const interval = view.point.checks?.value.interval;
  const proposed = broken(intervalSuffices, view)?.fact;
  if (proposed === undefined || interval === undefined) return [];
  const text = writeQuantity(proposed.value, proposed.dimension);
  return [
    {
      title: `Check every ${showFact(proposed)}, within which the error stays in its tolerance`,
      kind: 'choice',
      edits: [replaceScalar(interval.cursor, text)],
    },
  ];
}
