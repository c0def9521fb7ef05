import { highest } from '../evaluate/air/quantity-range.ts';
import { showFact } from '../evaluate/facts/fact.ts';
import { dewPointOverLine } from '../evaluate/mounting/limits.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import type { Rule } from './rule.ts';
import { worstPhase } from './support/related.ts';
import { atCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'sample-line-cold',
  group: 'Mounting',
  severity: 'error',
  title: 'The wall of a sample line is not above the dew point by the margin.',
  why: 'Water condenses in the line. What reaches the sensor is drier than the process, and later, when the water evaporates, wetter.',
  mend: 'Heat the line to more than the highest dew point and the margin, over its whole length, joints included.',
  leavesAlone: 'Probes that sit in the air itself, and lines whose temperature is not given.',
  sources: ['common practice, no source', 'IAPWS SR1-86(1992)'],
  facts: [highest('dew-point')],
  fixes: [],
  check: {
    point: (view) => {
      const { space, settings } = view;
      const mounting = view.point.humidityProbe?.value.mounting?.value;
      const line = mounting?.sampleLineTemperature;
      if (mounting?.path?.value !== 'sample-line' || line === undefined || space?.complete !== true) return [];
      const dewPoint = dewPointOverLine(space, line, settings.margin);
      if (dewPoint === undefined) return [];
      const needed = dewPoint.value + settings.margin.value;
      const [at, warmEnough] = [line.value.value, needed].map((celsius) => showQuantity(celsius, 'temperature'));
      const margin = showQuantity(settings.margin.value, 'temperature-difference');
      return [
        {
          message: () =>
            `The sample line is at ${at}, and the dew point reaches ${showFact(dewPoint)}${atCorner(dewPoint)}: the line is not above it by the margin of ${margin}. Heat it to more than ${warmEnough}.`,
          origin: line.origin,
          facts: [dewPoint],
          related: () => worstPhase(space, dewPoint),
        },
      ];
    },
  },
};
