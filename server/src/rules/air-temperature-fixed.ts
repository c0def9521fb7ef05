import { fixedTemperatureLimit } from '../evaluate/air-temperature/limits.ts';
import { fixedTemperatureError } from '../evaluate/air-temperature/taken-temperature.ts';
import { showFact } from '../evaluate/facts/fact.ts';
import { broken } from '../evaluate/facts/limit.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import type { Rule } from './rule.ts';
import { worstPhase } from './support/related.ts';
import { atCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'air-temperature-fixed',
  group: 'Quantities',
  severity: 'warning',
  title: 'A report is computed with a fixed air temperature, and the air varies more than its tolerance bears.',
  why: 'A fixed value is right at one temperature. In near-saturated air each 0.1 K that the air is away from it costs about 0.6 %RH.',
  mend: 'Measure the air temperature with an unheated probe and assign it.',
  leavesAlone: 'Spaces whose temperature stays so close to the value that the error is within the tolerance.',
  sources: ['common practice, no source'],
  facts: [fixedTemperatureError],
  fixes: [],
  check: {
    point: (view) =>
      view.reports.flatMap(({ quantity, report, source }) => {
        const { airTemperature, tolerance } = report.value;
        const error = broken(fixedTemperatureLimit(quantity), view)?.fact;
        if (source.kind !== 'fixed' || error === undefined || tolerance === undefined || airTemperature === undefined)
          return [];
        const { title } = quantityInfo(quantity);
        const taken = showQuantity(source.celsius, 'temperature');
        const limit = showQuantity(tolerance.value.value, tolerance.value.dimension);
        return {
          message: () =>
            `The ${title} is computed for air of ${taken}; it is off by up to ${showFact(error)}${atCorner(error)}, over its tolerance of ${limit}. Measure the air temperature with an unheated probe.`,
          origin: airTemperature.origin,
          facts: [error],
          related: () => [
            ...worstPhase(view.space, error),
            { message: `The tolerance is ${limit}.`, origin: tolerance.origin },
          ],
        };
      }),
  },
};
