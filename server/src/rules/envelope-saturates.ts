import { boxFacts } from '../evaluate/air/envelope-facts.ts';
import type { SaturationCut } from '../evaluate/air/envelope-limits.ts';
import type { PhaseEvaluation } from '../evaluate/air/phase.ts';
import { isKnown, showCorner, showFact } from '../evaluate/facts/fact.ts';
import { showRange, writeRange } from '../quantity/format-quantity.ts';
import { renameKey, replaceScalar } from '../syntax/edit.ts';
import type { FixDraft, Rule } from './rule.ts';

export const rule: Rule = {
  name: 'envelope-saturates',
  group: 'Quantities',
  severity: 'information',
  title: 'The box of temperature and humidity reaches over saturation and is cut there.',
  why: 'A box lets every dew point occur at every temperature. Where the highest dew point lies above the lowest temperature, 100 %RH belongs to the envelope, and every point in it is judged by that.',
  mend: 'Where temperature and dew point move together, give the dew-point depression instead. Where the air does saturate, nothing needs mending.',
  sources: ['IAPWS SR1-86(1992)', 'Greenspan 1976 in the coefficients of Hardy 1998'],
  facts: [boxFacts['highest-dew-point'], boxFacts['lowest-temperature']],
  fixes: ['choice'],
  check: {
    space: ({ phases, facts }) =>
      phases.flatMap((phase) => {
        const { cut, envelope } = phase;
        if (cut === undefined) return [];
        const highestDewPoint = facts.get(boxFacts['highest-dew-point'](envelope.phase));
        const lowestTemperature = facts.get(boxFacts['lowest-temperature'](envelope.phase));
        if (!isKnown(highestDewPoint) || !isKnown(lowestTemperature)) return [];
        const corner = lowestTemperature.at === undefined ? '100 %RH' : showCorner(lowestTemperature.at);
        return {
          message: () =>
            `The highest dew point, ${showFact(highestDewPoint)}, lies above the lowest air temperature, ${showFact(lowestTemperature)}: the envelope is cut at saturation and reaches ${corner}. Where the two move together, give the dew-point depression instead.`,
          origin: envelope.humidity.origin,
          facts: [highestDewPoint, lowestTemperature],
          related: () => [{ message: 'The air temperature of the envelope.', origin: envelope.temperature.origin }],
          fixes: () => giveDepression(phase, cut),
        };
      }),
  },
};

function giveDepression({ envelope }: PhaseEvaluation, { depression }: SaturationCut): readonly FixDraft[] {
  const { node, part } = envelope.located.cursor;
  if (depression === undefined || node.kind !== 'map') return [];
  const pair = node.pairs.find(({ key }) => key.text === envelope.humidityKey);
  if (pair === undefined) return [];
  const { low, high } = depression;
  const range = showRange(low, high, 'temperature-difference');
  const value = replaceScalar(envelope.humidity.cursor, writeRange(low, high, 'temperature-difference'));
  return [
    {
      title: `Give a dew-point depression of ${range}: temperature and dew point then move together`,
      kind: 'choice',
      edits: [renameKey(part, pair, 'dew-point-depression'), value],
    },
  ];
}
