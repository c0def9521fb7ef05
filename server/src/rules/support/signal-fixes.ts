/** Other spans and scales for signals. */
import type { Span } from '../../base/span.ts';
import type { AnalogueUse } from '../../evaluate/resolved/signal-use.ts';
import { showRange, writeRange } from '../../quantity/format-quantity.ts';
import { replaceScalar } from '../../syntax/edit.ts';
import type { FixDraft } from '../rule.ts';

export function setSpan({ span }: AnalogueUse, to: Span, verb: 'Widen' | 'Narrow'): readonly FixDraft[] {
  if (span === undefined) return [];
  const { dimension } = span.value;
  const shown = showRange(to.low, to.high, dimension);
  return [
    {
      title: `${verb} the span to ${shown}; the receiver must be scaled to match`,
      kind: 'choice',
      edits: [replaceScalar(span.cursor, writeRange(to.low, to.high, dimension))],
    },
  ];
}
