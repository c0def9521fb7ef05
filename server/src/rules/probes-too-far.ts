import { airTemperatureCost, airTemperatureError } from '../evaluate/air-temperature/cost.ts';
import { largestSpacing } from '../evaluate/air-temperature/remedies.ts';
import { showFact } from '../evaluate/facts/fact.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import type { Rule } from './rule.ts';
import { costliestError, costRelated, costWords, neededByAll } from './support/costly-error.ts';
import { setLength } from './support/mounting.ts';

export const rule: Rule = {
  name: 'probes-too-far',
  group: 'Mounting',
  severity: 'warning',
  title: 'Across the spacing of the two probes the air temperature varies by more than a tolerance can spare.',
  why: 'Humidity and air temperature then belong to two different pieces of air, and what is computed from the pair belongs to neither.',
  mend: 'Bring the air-temperature probe closer to the humidity probe.',
  leavesAlone: 'Spaces without a gradient: nothing says how much their air varies.',
  sources: ['common practice, no source'],
  facts: [airTemperatureError.gradient, airTemperatureCost.gradient, largestSpacing],
  fixes: ['choice'],
  check: {
    point: (view) => {
      const costly = costliestError(view, 'air-temperature-probe', 'gradient');
      const mounting = view.point.airTemperatureProbe?.value.mounting;
      const spacing = mounting?.value.spacing;
      const gradient = view.space?.located.value.gradient;
      if (costly === undefined || mounting === undefined || spacing === undefined || gradient === undefined) return [];
      const largest = neededByAll(view, 'air-temperature-probe', largestSpacing);
      const [apart, varies] = [spacing, gradient].map(({ value }) => showQuantity(value.value, value.dimension));
      const mend =
        largest === undefined
          ? 'No spacing is small enough: the tolerance asks too much of this space.'
          : `Bring them to ${showFact(largest)} or closer.`;
      return [
        {
          message: () =>
            `The probes are ${apart} apart where the air varies by ${varies}: ${costWords(costly)}. ${mend}`,
          origin: spacing.origin,
          facts: [costly.error, costly.cost, ...(largest === undefined ? [] : [largest])],
          related: () => [
            { message: `The gradient is ${varies}.`, origin: gradient.origin },
            ...costRelated(view, costly),
          ],
          fixes: () =>
            largest === undefined
              ? []
              : [
                  {
                    title: `Space the probes ${showFact(largest)} apart; they must be moved on site`,
                    kind: 'choice',
                    edits: [setLength(mounting, 'spacing', spacing, largest)],
                  },
                ],
        },
      ];
    },
  },
};
