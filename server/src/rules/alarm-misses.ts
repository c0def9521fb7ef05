import { isKnown, type KnownFact, showFact } from '../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { AlarmUse } from '../evaluate/resolved/alarm-use.ts';
import { guardBandedAlarmLimit, missedAlarm } from '../evaluate/signals/alarm-facts.ts';
import { writeQuantity } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import { replaceScalar } from '../syntax/edit.ts';
import type { FindingDraft, FixDraft, Rule } from './rule.ts';
import { acceptanceAbove } from './support/acceptance-edit.ts';
import { limitWords } from './support/alarm-views.ts';
import { atCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'alarm-misses',
  group: 'Outputs and alarms',
  severity: 'warning',
  title: 'The uncertainty makes an alarm miss more than one in twenty excursions by one tolerance.',
  why: 'The reading may be lower than the air is. Where its uncertainty is large against the tolerance, the air can be a whole tolerance beyond the limit while the alarm stays silent.',
  mend: 'Lessen the uncertainty, or set the limit inwards of the value that is wanted.',
  leavesAlone: 'Alarms of reports without a tolerance.',
  sources: ['JCGM 106:2012; normal distribution of the reading', 'one in twenty: common practice, no source'],
  facts: [missedAlarm, guardBandedAlarmLimit],
  fixes: ['choice'],
  check: { point: (view) => view.alarms.flatMap((alarm) => missing(view, alarm)) },
};

/** A guard-banded limit is there only where more than one in twenty are missed. */
function missing(view: PointEvaluation, alarm: AlarmUse): readonly FindingDraft[] {
  const { name, quantity, limit } = alarm;
  const [missed, guarded] = [view.facts.get(missedAlarm(name)), view.facts.get(guardBandedAlarmLimit(name))];
  if (!isKnown(missed) || !isKnown(guarded)) return [];
  const { title } = quantityInfo(quantity);
  return [
    {
      message: () =>
        `With the ${title} one tolerance beyond its limit, ${name} stays silent with a probability of ${showFact(missed)}${atCorner(missed)}, over 5 %. Lessen the uncertainty, or set the limit at ${showFact(guarded)}.`,
      origin: limit.origin,
      facts: [missed, guarded],
      fixes: () => setInwards(alarm, guarded),
    },
  ];
}

/** The wanted limit is noted beside it, as an acceptance: the file would otherwise have forgotten it. */
function setInwards(alarm: AlarmUse, guarded: KnownFact): readonly FixDraft[] {
  const { limit } = alarm;
  const reason = `wanted ${limitWords(alarm)}, set inwards of that for the uncertainty`;
  return [
    {
      title: `Set the limit at ${showFact(guarded)} and note that it is wanted ${limitWords(alarm)}`,
      kind: 'choice',
      edits: [
        acceptanceAbove(limit.cursor, 'alarm-misses', reason),
        replaceScalar(limit.cursor, writeQuantity(guarded.value, guarded.dimension)),
      ],
    },
  ];
}
