import { humidityAtSensor, riseToSet } from '../evaluate/dryness/dryness.ts';
import { sensorHumidityLimit } from '../evaluate/dryness/limits.ts';
import { showFact } from '../evaluate/facts/fact.ts';
import { broken, showBound } from '../evaluate/facts/limit.ts';
import { modelHasNoHeater, ownModelHeats } from '../evaluate/heated-models.ts';
import { showQuantity, writeQuantity } from '../quantity/format-quantity.ts';
import { replaceScalar } from '../syntax/edit.ts';
import type { Rule } from './rule.ts';
import { riseWanted } from './support/heater-fixes.ts';
import { worstPhase } from './support/related.ts';
import { atCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'heater-rise-short',
  group: 'Dryness and heater',
  severity: 'error',
  title: 'The rise asked of the heater does not bring the sensor under its humidity limit.',
  why: 'The sensor stays near saturation although it is heated, and condenses on the next swing of the process.',
  mend: 'Ask for the rise computed, or choose a model that reaches it.',
  leavesAlone:
    'Models without a heater: heater-absent speaks of those. What the heater reaches in moving air: heater-rise-unreachable does.',
  sources: ['IAPWS SR1-86(1992)', 'Greenspan 1976 in the coefficients of Hardy 1998'],
  facts: [humidityAtSensor, riseToSet],
  fixes: ['safe'],
  check: {
    point: (view) => {
      const { rise } = view.heater;
      const wet = broken(sensorHumidityLimit, view);
      const needed = riseWanted(view);
      if (rise === undefined || wet === undefined || needed === undefined || modelHasNoHeater(view)) return [];
      const { fact: humidity, bound } = wet;
      const asked = showQuantity(rise.value.value, 'temperature-difference');
      const reached = ownModelHeats(view, needed.value);
      const mend = reached
        ? `Ask for ${showFact(needed)}.`
        : `It needs ${showFact(needed)}, and its model is not known to reach or bear that.`;
      const edits = [replaceScalar(rise.cursor, writeQuantity(needed.value, needed.dimension))];
      const title = `Ask for a rise of ${showFact(needed)}`;
      return [
        {
          message: () =>
            `A rise of ${asked} leaves the sensor at up to ${showFact(humidity)}${atCorner(humidity)}, over its limit of ${showBound(bound)}. ${mend}`,
          origin: rise.origin,
          facts: [humidity, needed],
          related: () => worstPhase(view.space, humidity),
          fixes: () => (reached ? [{ title, kind: 'safe', edits }] : []),
        },
      ];
    },
  },
};
