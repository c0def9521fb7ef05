import { heatedHeadError } from '../evaluate/air-temperature/taken-temperature.ts';
import { isKnown, showFact } from '../evaluate/facts/fact.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import type { Rule } from './rule.ts';
import { addAirTemperatureProbe, assignOwnProbe } from './support/air-temperature-fixes.ts';
import { heaterIsOn, worstPhase } from './support/related.ts';
import { atCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'air-temperature-from-heated-head',
  group: 'Quantities',
  severity: 'error',
  title: 'A report takes the temperature of a heated head for that of the air.',
  why: 'The head is warmer than the air by the rise of its heater. Relative humidity computed with it is that at the warm sensor, far below that of the air.',
  mend: 'Assign an unheated air-temperature probe.',
  leavesAlone: 'Humidity probes whose heater is off: their temperature is that of the air.',
  sources: ['common practice, no source'],
  facts: [heatedHeadError],
  fixes: ['choice'],
  check: {
    point: (view) =>
      view.reports.flatMap((evaluated) => {
        const { quantity, report, source } = evaluated;
        if (source.kind !== 'heated-head') return [];
        const error = view.facts.get(heatedHeadError(quantity));
        const cost = isKnown(error) ? `, and is off by up to ${showFact(error)}${atCorner(error)}` : '';
        return {
          message: () =>
            `The ${quantityInfo(quantity).title} is computed with the temperature of the heated head${cost}. Assign an unheated air-temperature probe.`,
          origin: report.value.airTemperature?.origin ?? report.origin,
          facts: isKnown(error) ? [error] : [],
          related: () => [...heaterIsOn(view), ...(isKnown(error) ? worstPhase(view.space, error) : [])],
          fixes: () => [...assignOwnProbe(view, report, 'choice'), ...addAirTemperatureProbe(view, evaluated)],
        };
      }),
  },
};
