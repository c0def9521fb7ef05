import { quantityInfo } from '../quantity/quantity-names.ts';
import type { Rule } from './rule.ts';
import { addAirTemperatureProbe, reportDewPointInstead, switchHeaterOff } from './support/air-temperature-fixes.ts';
import { heaterIsOn } from './support/related.ts';

export const rule: Rule = {
  name: 'air-temperature-missing',
  group: 'Quantities',
  severity: 'error',
  title: 'A report depends on the air temperature, the head is heated, and nothing measures the air.',
  why: 'A heated head knows its own temperature, not that of the air. Relative humidity computed from it reads far too low, and everything else that needs the air temperature is wrong with it.',
  mend: 'Add an unheated air-temperature probe and assign it to the report, or report a quantity that a heated head can give, such as the dew point.',
  leavesAlone:
    'Points that have an air-temperature probe which is only not assigned: air-temperature-unassigned speaks of those.',
  sources: ['common practice, no source'],
  facts: ['humidity-at-sensor-unheated'],
  fixes: ['choice'],
  check: {
    point: (view) =>
      view.reports.flatMap(({ quantity, source }) => {
        const report = view.point.reports?.value.get(quantity);
        const missing = source.kind === 'no-such-probe' || (source.kind === 'unassigned' && !source.probeThere);
        if (report === undefined || !missing || !view.heater.on) return [];
        return {
          message: `The ${quantityInfo(quantity).title} needs the air temperature, but the head is heated and the point has no air-temperature probe. Add a probe and assign it, or report the dew point instead.`,
          origin: report.keyOrigin ?? report.origin,
          related: heaterIsOn(view),
          fixes: [
            ...addAirTemperatureProbe(view, report),
            ...reportDewPointInstead(view, quantity),
            ...switchHeaterOff(view),
          ],
        };
      }),
  },
};
