import type { PointEvaluation } from '../evaluate/point.ts';
import type { AnalogueUse } from '../evaluate/signal-use.ts';
import { showRange } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantity-names.ts';
import { replaceScalar } from '../syntax/edit.ts';
import type { FindingDraft, FixDraft, Rule } from './rule.ts';

export const rule: Rule = {
  name: 'span-mismatch',
  group: 'Outputs and alarms',
  severity: 'warning',
  title: 'One quantity goes to one kind of input twice, with two spans.',
  why: 'Whoever scales the second input copies the scaling of the first. The two values then disagree by the ratio of the spans, and nobody knows which one is right.',
  mend: 'Give both signals one span; or send the second one to another receiver, if a coarse and a fine range are meant.',
  leavesAlone: 'Signals of different points: each has its own input and its own scaling.',
  sources: ['common practice, no source'],
  facts: [],
  fixes: ['choice'],
  check: { point: mismatched },
};

function mismatched({ signals }: PointEvaluation): readonly FindingDraft[] {
  const analogue = signals.filter((use) => use.kind === 'analogue');
  return analogue.flatMap((use, index): FindingDraft[] => {
    const first = analogue.slice(0, index).find((earlier) => isSameInput(earlier, use));
    const [span, other] = [use.span, first?.span];
    if (first === undefined || span === undefined || other === undefined || isSameSpan(first, use)) return [];
    const { title, dimension } = quantityInfo(use.quantity);
    const [own, firstShown] = [span, other].map(({ value }) => showRange(value.low, value.high, dimension));
    return [
      {
        message: `${use.name} carries the ${title} as ${own} to ${use.receiver?.id}, and ${first.name} carries it there as ${firstShown}. Give both one span, so that no input is scaled with the other's.`,
        origin: span.origin,
        related: [{ message: `The span of ${first.name} is here.`, origin: other.origin }],
        fixes: takeSpan(use, first, firstShown ?? ''),
      },
    ];
  });
}

function isSameInput(one: AnalogueUse, other: AnalogueUse): boolean {
  return one.quantity === other.quantity && one.receiver !== undefined && one.receiver === other.receiver;
}

function isSameSpan({ carries: one }: AnalogueUse, { carries: other }: AnalogueUse): boolean {
  return one === undefined || other === undefined || (one.low === other.low && one.high === other.high);
}

/** As the other is typed. */
function takeSpan({ span }: AnalogueUse, { name, span: from }: AnalogueUse, shown: string): readonly FixDraft[] {
  const node = from?.cursor.node;
  if (span === undefined || node?.kind !== 'scalar') return [];
  return [
    { title: `Use the span of ${name}, ${shown}`, kind: 'choice', edits: [replaceScalar(span.cursor, node.text)] },
  ];
}
