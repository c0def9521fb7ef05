import { isKnown, showFact } from '../evaluate/facts/fact.ts';
import { broken } from '../evaluate/facts/limit.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { AlarmUse } from '../evaluate/resolved/alarm-use.ts';
import { clearToSet, leastHysteresis } from '../evaluate/signals/alarm-facts.ts';
import { hysteresisLimit } from '../evaluate/signals/limits.ts';
import { showQuantity, writeQuantity } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import { appendPair, replaceScalar } from '../syntax/edit.ts';
import type { FindingDraft, FixDraft, Rule } from './rule.ts';
import { atCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'alarm-chatters',
  group: 'Outputs and alarms',
  severity: 'warning',
  title: 'An alarm clears closer to its limit than the noise of the reading moves it.',
  why: 'While the air stays at the limit, noise alone carries the reading back and forth over both values: the alarm rings and clears all night, and is then switched off.',
  mend: 'Let the alarm clear further inwards. Left out, the clearing value is the limit itself.',
  leavesAlone: 'Delays: a delayed alarm chatters more slowly and chatters all the same.',
  sources: ['Repeatability limit of ISO 5725-6, 4.1; its use for hysteresis is common practice'],
  facts: [leastHysteresis, clearToSet],
  fixes: ['choice'],
  check: { point: (view) => view.alarms.flatMap((alarm) => chattering(view, alarm)) },
};

function chattering(view: PointEvaluation, alarm: AlarmUse): readonly FindingDraft[] {
  const { name, quantity, hysteresis, clear, limit } = alarm;
  const least = broken(hysteresisLimit(alarm), view)?.fact;
  if (least === undefined || hysteresis === undefined) return [];
  const clears =
    hysteresis === 0
      ? `The alarm ${name} clears at its limit`
      : hysteresis < 0
        ? `The alarm ${name} clears beyond its limit`
        : `The alarm ${name} clears ${showQuantity(hysteresis, quantityInfo(quantity).difference)} from its limit`;
  return [
    {
      message: () =>
        `${clears}, and noise alone moves the reading by ${showFact(least)}${atCorner(least)}: the alarm chatters. Let it clear further inwards.`,
      origin: (clear ?? limit).origin,
      facts: [least],
      fixes: () => clearInwards(view, alarm),
    },
  ];
}

function clearInwards({ facts }: PointEvaluation, { name, clear, located }: AlarmUse): readonly FixDraft[] {
  const toSet = facts.get(clearToSet(name));
  if (!isKnown(toSet)) return [];
  const text = writeQuantity(toSet.value, toSet.dimension);
  const edit = clear === undefined ? appendPair(located.cursor, 'clear', text) : replaceScalar(clear.cursor, text);
  return [{ title: `Clear at ${showFact(toSet)}`, kind: 'choice', edits: [edit] }];
}
