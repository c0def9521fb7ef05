import { PLUME_SPEED } from '../evaluate/air-temperature/head-warming.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import { replaceScalar } from '../syntax/edit.ts';
import type { Rule } from './rule.ts';
import { slowestIs, slowestPhase, slowestWords } from './support/air-speed.ts';
import { heaterIsOn } from './support/related.ts';

export const rule: Rule = {
  name: 'air-probe-above',
  group: 'Mounting',
  severity: 'warning',
  title: 'The air-temperature probe is above a heated head where the air may be almost still.',
  why: 'Warm air rises from the head. In still air the probe above it reads that warmth, whatever an estimate says of how much.',
  mend: 'Mount the probe below the humidity probe, or upstream of it.',
  leavesAlone: 'Air that never falls under 0.2 m/s, and heads that are not heated.',
  sources: ['common practice, no source'],
  facts: [],
  fixes: ['choice'],
  check: {
    point: (view) => {
      const position = view.point.airTemperatureProbe?.value.mounting?.value.position;
      const slowest = slowestPhase(view.space);
      if (!view.heater.on || position?.value !== 'above' || slowest === undefined) return [];
      if (slowest.speed.value.low >= PLUME_SPEED) return [];
      const limit = showQuantity(PLUME_SPEED, 'speed');
      return [
        {
          message: () =>
            `The air-temperature probe is above the heated head, and the air may be as slow as ${slowestWords(slowest)}; under ${limit} the probe sits in the warm plume. Mount it below.`,
          origin: position.origin,
          related: () => [...heaterIsOn(view), slowestIs(slowest)],
          fixes: () => [
            {
              title: 'Mount it below the humidity probe; it must be moved on site',
              kind: 'choice',
              edits: [replaceScalar(position.cursor, 'below')],
            },
          ],
        },
      ];
    },
  },
};
