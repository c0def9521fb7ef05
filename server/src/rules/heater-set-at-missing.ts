import { isUnread } from '../evaluate/facts/unread.ts';
import { modelHasNoHeater } from '../evaluate/heated-models.ts';
import { appendPair } from '../syntax/edit.ts';
import type { FixDraft, Rule } from './rule.ts';

export const rule: Rule = {
  name: 'heater-set-at-missing',
  group: 'Dryness and heater',
  severity: 'hint',
  title: 'The heater is on, and nothing says whether the factory or the site sets it.',
  why: "A heater that each side takes for the other one's work stays off. The handover plan carries the step only where the site sets it.",
  mend: 'Say set-at: factory where the probe was ordered with its heater on, set-at: site where it is set on site.',
  sources: ['common practice, no source'],
  facts: [],
  fixes: ['choice'],
  check: {
    point: (view) => {
      const heater = view.heater.located;
      if (!view.heater.on || heater === undefined || modelHasNoHeater(view)) return [];
      if (heater.value.setAt !== undefined || isUnread(heater, 'set-at', heater.value.setAt)) return [];
      const choose = (who: string, consequence: string): FixDraft => ({
        title: `Say set-at: ${who}; the handover plan then ${consequence}`,
        kind: 'choice',
        edits: [appendPair(heater.cursor, 'set-at', who)],
      });
      return [
        {
          message: () =>
            `The heater is ${view.heater.mode}, and nothing says whether the factory or the site sets it, so that the handover plan cannot say who does. Give set-at.`,
          origin: heater.keyOrigin ?? heater.origin,
          fixes: () => [choose('factory', 'has it looked at'), choose('site', 'has it set')],
        },
      ];
    },
  },
};
