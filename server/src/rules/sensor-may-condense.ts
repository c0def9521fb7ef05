import { humidityAtSensor, marginToDewPoint, riseToSet } from '../evaluate/dryness/dryness.ts';
import { sensorHumidityLimit, sensorMargin, sensorSaturation } from '../evaluate/dryness/limits.ts';
import { type KnownFact, showFact } from '../evaluate/facts/fact.ts';
import { broken, showBound } from '../evaluate/facts/limit.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import type { Rule } from './rule.ts';
import { heatContinuously, riseWanted, useHeatedModel } from './support/heater-fixes.ts';
import { worstPhase } from './support/related.ts';
import { atCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'sensor-may-condense',
  group: 'Dryness and heater',
  severity: 'warning',
  title: 'An unheated sensor is so close to the dew point that it may condense; at 100 %RH this is an error.',
  why: 'A wet sensor reads wrong for minutes to hours, and one that is wet again and again drifts.',
  mend: 'Heat the sensor by the rise computed, with a model that has a heater. What needs the air temperature then needs a probe of its own.',
  leavesAlone: 'Heated sensors: heater-rise-short speaks of those. Sensors in a sample line: sample-line-cold does.',
  sources: ['common practice, no source', 'IAPWS SR1-86(1992)'],
  facts: [humidityAtSensor, marginToDewPoint, riseToSet],
  fixes: ['choice'],
  check: {
    point: (view) => {
      const probe = view.point.humidityProbe;
      const worst = worstOf(view);
      if (probe === undefined || worst === undefined) return [];
      const rise = riseWanted(view);
      const limit = showQuantity(view.settings.sensorHumidityLimit.value, 'relative-humidity');
      const mend = rise === undefined ? '' : ` A rise of ${showFact(rise)} would keep it at or below ${limit}.`;
      return [
        {
          message: () => `${worst.words}${mend}`,
          origin: probe.keyOrigin ?? probe.origin,
          severity: worst.saturated ? 'error' : 'warning',
          facts: rise === undefined ? [worst.fact] : [worst.fact, rise],
          related: () => worstPhase(view.space, worst.fact),
          fixes: () => [...heatContinuously(view), ...useHeatedModel(view)],
        },
      ];
    },
  },
};

interface Worst {
  readonly words: string;
  readonly saturated: boolean;
  readonly fact: KnownFact;
}

function worstOf(view: PointEvaluation): Worst | undefined {
  if (view.heater.on) return undefined;
  const saturated = broken(sensorSaturation, view)?.fact;
  if (saturated !== undefined) return { words: `${seen(saturated)}, and condenses.`, saturated: true, fact: saturated };
  const wet = broken(sensorHumidityLimit, view);
  if (wet !== undefined) {
    const words = `${seen(wet.fact)}, over its limit of ${showBound(wet.bound)}, and may condense.`;
    return { words, saturated: false, fact: wet.fact };
  }
  const close = broken(sensorMargin, view);
  if (close === undefined) return undefined;
  const { fact, bound } = close;
  const words = `The unheated sensor comes within ${showFact(fact)} of the dew point${atCorner(fact)}, under the margin of ${showBound(bound)}, and may condense.`;
  return { words, saturated: false, fact };
}

function seen(humidity: KnownFact): string {
  return `The unheated sensor sees up to ${showFact(humidity)}${atCorner(humidity)}`;
}
