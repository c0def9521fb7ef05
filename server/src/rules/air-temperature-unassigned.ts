import { quantityInfo } from '../quantity/quantities.ts';
import type { Rule } from './rule.ts';
import { assignOwnProbe } from './support/air-temperature-fixes.ts';
import { airTemperatureProbeIs, heaterIsOn } from './support/related.ts';

export const rule: Rule = {
  name: 'air-temperature-unassigned',
  group: 'Quantities',
  severity: 'error',
  title:
    'A report depends on the air temperature, the head is heated, and the air-temperature probe is there but not assigned.',
  why: 'Nothing is assigned silently: an instrument whose air-temperature probe is connected and not assigned goes on computing with the temperature of its heated head, and reads far too low.',
  mend: 'Assign the air-temperature probe to the report, here and in the instrument.',
  leavesAlone: 'Reports that do not depend on the air temperature, such as the dew point.',
  sources: ['common practice, no source'],
  facts: [],
  fixes: ['safe'],
  check: {
    point: (view) =>
      view.reports.flatMap(({ quantity, report, source }) => {
        if (source.kind !== 'unassigned' || !source.probeThere) return [];
        return {
          message: () =>
            `The ${quantityInfo(quantity).title} needs the air temperature, the head is heated, and the air-temperature probe is not assigned. Assign it to this report.`,
          origin: report.keyOrigin ?? report.origin,
          related: () => [...airTemperatureProbeIs(view), ...heaterIsOn(view)],
          fixes: () => assignOwnProbe(view, report, 'safe'),
        };
      }),
  },
};
