/** Conductor sizes with the voltage that each brings, where it can be computed. */

import { isKnown, showFact } from '../../../evaluate/facts/fact.ts';
import { conductorChoices } from '../../../evaluate/supply/conductor-choices.ts';
import { type CompletionItem, withDetail } from './completion-item.ts';
import type { CompletionContext } from './context.ts';

export function conductorItems({ point, place }: CompletionContext): readonly CompletionItem[] {
  if (place.path.at(-1) !== 'conductor' || place.before !== '') return [];
  return conductorChoices(point).map(({ text, voltage }) => ({
    label: text,
    kind: 'value',
    insert: [text],
    ...withDetail(isKnown(voltage) ? `${showFact(voltage)} at the far end` : undefined),
  }));
}
