import { airTemperatureCost, airTemperatureError } from '../evaluate/air-temperature/cost.ts';
import { spacingNeeded } from '../evaluate/air-temperature/remedies.ts';
import { showFact } from '../evaluate/facts/fact.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import type { Rule } from './rule.ts';
import { costliestError, costRelated, costWords, neededByAll } from './support/costly-error.ts';
import { setLength } from './support/mounting.ts';
import { heaterIsOn } from './support/related.ts';

export const rule: Rule = {
  name: 'probes-too-close',
  group: 'Mounting',
  severity: 'warning',
  title: 'The heated head warms the air at the air-temperature probe by more than a tolerance can spare.',
  why: 'The probe then reads the plume or the wake of the heated head and not the air: relative humidity computed with it is too low, and comes and goes with the air speed.',
  mend: 'Move the probe out of the plume or wake, or farther from the head.',
  leavesAlone:
    'Probes below, beside and upstream of the head, and above it in air that always moves. The estimate is within a factor of two.',
  sources: [
    'Heskestad plume, as NUREG-1805 eq. 9-2, extrapolated from kilowatts to watts',
    'Schlichting, Boundary-Layer Theory, plane turbulent wake, from memory',
    'a third of the tolerance for one error: common practice, no source',
  ],
  facts: [airTemperatureError['head-warming'], airTemperatureCost['head-warming'], spacingNeeded],
  fixes: ['choice'],
  check: {
    point: (view) => {
      const costly = costliestError(view, 'air-temperature-probe', 'head-warming');
      const mounting = view.point.airTemperatureProbe?.value.mounting;
      const spacing = mounting?.value.spacing;
      if (costly === undefined || mounting === undefined || spacing === undefined) return [];
      const needed = neededByAll(view, 'air-temperature-probe', spacingNeeded);
      const where = mounting.value.position?.value === 'downstream' ? 'downstream of' : 'above';
      const mend =
        needed === undefined
          ? 'No usual spacing is enough: mount it below or upstream of the head.'
          : `Mount it below or upstream of the head, or ${showFact(needed)} away.`;
      return [
        {
          message: () =>
            `${showQuantity(spacing.value.value, 'length')} ${where} the heated head, the air-temperature probe is warmed by an estimated ${costWords(costly)}. ${mend}`,
          origin: spacing.origin,
          facts: [costly.error, costly.cost, ...(needed === undefined ? [] : [needed])],
          related: () => [...heaterIsOn(view), ...costRelated(view, costly)],
          fixes: () =>
            needed === undefined
              ? []
              : [
                  {
                    title: `Space the probes ${showFact(needed)} apart; they must be moved on site`,
                    kind: 'choice',
                    edits: [setLength(mounting, 'spacing', spacing, needed)],
                  },
                ],
        },
      ];
    },
  },
};
