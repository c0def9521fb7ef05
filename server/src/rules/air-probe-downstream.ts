import { replaceScalar } from '../syntax/edit.ts';
import type { Rule } from './rule.ts';
import { heaterIsOn } from './support/related.ts';

export const rule: Rule = {
  name: 'air-probe-downstream',
  group: 'Mounting',
  severity: 'warning',
  title: 'The air-temperature probe is downstream of a heated head.',
  why: 'The wake of the head carries its warmth to the probe. How much reaches it changes with the air, so that no correction helps.',
  mend: 'Mount the probe upstream of the humidity probe, or beside it.',
  leavesAlone: 'Heads that are not heated.',
  sources: ['common practice, no source'],
  facts: [],
  fixes: ['choice'],
  check: {
    point: (view) => {
      const position = view.point.airTemperatureProbe?.value.mounting?.value.position;
      if (!view.heater.on || position?.value !== 'downstream') return [];
      return [
        {
          message: () =>
            'The air-temperature probe is downstream of the heated head, in its warm wake. Mount it upstream or beside.',
          origin: position.origin,
          related: () => heaterIsOn(view),
          fixes: () => [
            {
              title: 'Mount it upstream of the humidity probe; it must be moved on site',
              kind: 'choice',
              edits: [replaceScalar(position.cursor, 'upstream')],
            },
          ],
        },
      ];
    },
  },
};
