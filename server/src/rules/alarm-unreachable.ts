import { showFact } from '../evaluate/facts/fact.ts';
import { broken } from '../evaluate/facts/limit.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { AlarmUse } from '../evaluate/resolved/alarm-use.ts';
import { highestReported, lowestReported } from '../evaluate/resolved/report-range.ts';
import { alarmOverLowest, alarmUnderHighest } from '../evaluate/signals/limits.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import type { FindingDraft, Rule } from './rule.ts';
import { carriersShortOf, limitWords } from './support/alarm-views.ts';
import { worstPhase } from './support/related.ts';
import { atCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'alarm-unreachable',
  group: 'Outputs and alarms',
  severity: 'warning',
  title: 'The limit of an alarm lies outside what the envelope can produce.',
  why: 'Either the alarm can never sound, or it always does; or the envelope leaves out the very excursion that the alarm is for, and then nothing in this file has been checked for it.',
  mend: 'Write the excursion into the envelope, so that sensor, span and heater are checked for it too; or move the limit.',
  leavesAlone: 'Limits that no signal carries: alarm-outside-span speaks of those.',
  sources: ['common practice, no source'],
  facts: [lowestReported, highestReported],
  fixes: [],
  check: { point: (view) => view.alarms.flatMap((alarm) => unreachable(view, alarm)) },
};

function unreachable(view: PointEvaluation, alarm: AlarmUse): readonly FindingDraft[] {
  const { quantity, limit, direction, name } = alarm;
  const [over, under] = [broken(alarmUnderHighest(alarm), view), broken(alarmOverLowest(alarm), view)];
  const end = (over ?? under)?.fact;
  if (end === undefined || carriersShortOf(view, alarm) !== undefined) return [];
  const isOver = over !== undefined;
  const sounds = isOver === (direction === 'above') ? 'never sounds' : 'always sounds';
  const { title } = quantityInfo(quantity);
  return [
    {
      message: () =>
        `The alarm ${name} is set ${limitWords(alarm)}, and the envelope takes the ${title} ${isOver ? 'up' : 'down'} to ${showFact(end)}${atCorner(end)}: in the air that this file describes it ${sounds}. Write the excursion into the envelope, or move the limit.`,
      origin: limit.origin,
      facts: [end],
      related: () => worstPhase(view.space, end),
    },
  ];
}
