import { isUnread } from '../evaluate/facts/unread.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { appendPair } from '../syntax/edit.ts';
import type { FindingDraft, Rule } from './rule.ts';

export const rule: Rule = {
  name: 'check-plan-missing',
  group: 'Uncertainty and checks',
  severity: 'warning',
  title: 'A point that reports something has no plan of its checks.',
  why: 'Every humidity sensor drifts. Without an interval nobody knows how far it may have drifted by the time somebody looks, and nothing limits its uncertainty.',
  mend: 'Say how often the point is checked, against what, and when that was done last.',
  leavesAlone: 'Points that report nothing.',
  sources: ['ILAC-G24 / OIML D 10'],
  facts: [],
  fixes: ['choice'],
  check: { point: missing },
};

function missing({ point, entry }: PointEvaluation): readonly FindingDraft[] {
  const { located, keyOrigin } = entry;
  if (located === undefined || point.checks !== undefined || isUnread(located, 'checks', point.checks)) return [];
  if (point.reports === undefined || point.reports.value.size === 0) return [];
  const plan = '{interval: 12 months, method: reference-instrument}';
  return [
    {
      message: () =>
        'Nothing says how often this point is checked, so that nothing limits its drift. Plan its checks: an interval, a method, and the date of the last one.',
      origin: keyOrigin,
      fixes: () => [
        {
          title:
            'Plan a check against a reference instrument every 12 months; the date of the last one is yours to give',
          kind: 'choice',
          edits: [appendPair(located.cursor, 'checks', plan)],
        },
      ],
    },
  ];
}
