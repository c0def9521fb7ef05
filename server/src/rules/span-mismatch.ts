import type { ModelRef } from '../evaluate/equipment/models.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { AnalogueUse } from '../evaluate/resolved/signal-use.ts';
import type { Located } from '../model/located.ts';
import type { ReceiverModel } from '../model/model-types.generated.ts';
import { showRange } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import type { QuantityRange } from '../quantity/quantity.ts';
import { textOf } from '../syntax/cursor.ts';
import { replaceScalar } from '../syntax/edit.ts';
import type { FindingDraft, Rule } from './rule.ts';

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

/** A signal with its span, at a receiver that is named. */
interface Input extends Pick<AnalogueUse, 'name' | 'quantity'> {
  readonly span: Located<QuantityRange>;
  readonly receiver: ModelRef<ReceiverModel>;
}

function inputOf({ span, name, quantity, receiver }: AnalogueUse): readonly Input[] {
  return span === undefined || receiver === undefined ? [] : [{ span, name, quantity, receiver }];
}

function mismatched({ signals }: PointEvaluation): readonly FindingDraft[] {
  const inputs = signals.flatMap((use) => (use.kind === 'analogue' ? inputOf(use) : []));
  return inputs.flatMap((input): FindingDraft[] => {
    const first = inputs.find((other) => isSameInput(other, input));
    if (first === undefined || isSameSpan(first, input)) return [];
    const { title } = quantityInfo(input.quantity);
    const [own, firstShown] = [shownSpan(input), shownSpan(first)];
    return [
      {
        message: () =>
          `${input.name} carries the ${title} as ${own} to ${input.receiver.id}, and ${first.name} carries it there as ${firstShown}. Give both one span, so that no input is scaled with the other's.`,
        origin: input.span.origin,
        related: () => [{ message: `The span of ${first.name} is here.`, origin: first.span.origin }],
        fixes: () => [
          {
            title: `Use the span of ${first.name}, ${firstShown}`,
            kind: 'choice',
            edits: [replaceScalar(input.span.cursor, textOf(first.span.cursor))],
          },
        ],
      },
    ];
  });
}

function isSameInput(one: Input, other: Input): boolean {
  return one.quantity === other.quantity && one.receiver === other.receiver;
}

function isSameSpan({ span: { value: one } }: Input, { span: { value: other } }: Input): boolean {
  return one.low === other.low && one.high === other.high;
}

function shownSpan({ span: { value }, quantity }: Input): string {
  return showRange(value.low, value.high, quantityInfo(quantity).dimension);
}
