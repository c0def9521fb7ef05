import { airTemperatureCost, airTemperatureError } from '../evaluate/air-temperature/cost.ts';
import { insertionNeeded, insulationNeeded } from '../evaluate/air-temperature/remedies.ts';
import { showFact } from '../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { ThermometerKind } from '../evaluate/resolved/thermometer.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import type { FindingDraft, Rule } from './rule.ts';
import { costliestError, costRelated, costWords, neededByAll } from './support/costly-error.ts';
import { mountingOf, probeWords, setLength, THERMOMETERS } from './support/mounting.ts';

export const rule: Rule = {
  name: 'insertion-short',
  group: 'Mounting',
  severity: 'warning',
  title: 'The wall pulls a probe from the air temperature by more than the tolerance of a report can spare.',
  why: 'A stem leads heat between wall and sensor. The reading is off by the same amount day after day, most where the air is hottest and the surroundings coldest, and no calibration shows it.',
  mend: 'Insert the probe deeper, insulate its fitting, or use a thinner stem.',
  leavesAlone:
    'Errors of up to a third of a tolerance, and points whose wall, surroundings, air speed or stem is not given. Where no usual insertion would do and insulation does, insulation-missing speaks.',
  sources: [
    'Bird, Stewart and Lightfoot, Transport Phenomena, example 10.7-1',
    'a third of the tolerance for one error: common practice, no source',
  ],
  facts: [airTemperatureError['stem-conduction'], airTemperatureCost['stem-conduction'], insertionNeeded],
  fixes: ['choice'],
  check: { point: (view) => THERMOMETERS.flatMap((thermometer) => tooShort(view, thermometer)) },
};

function tooShort(view: PointEvaluation, thermometer: ThermometerKind): readonly FindingDraft[] {
  const costly = costliestError(view, thermometer, 'stem-conduction');
  const mounting = mountingOf(view, thermometer);
  const insertion = mounting?.value.insertion;
  if (costly === undefined || mounting === undefined || insertion === undefined) return [];
  if (neededByAll(view, thermometer, insulationNeeded) !== undefined) return [];
  const needed = neededByAll(view, thermometer, insertionNeeded);
  const present = showQuantity(insertion.value.value, 'length');
  const mend =
    needed === undefined
      ? 'No usual insertion is enough: use a thinner stem.'
      : `Insert it ${showFact(needed)} instead of ${present}.`;
  return [
    {
      message: () => `The wall pulls the ${probeWords(thermometer)} from the air by ${costWords(costly)}. ${mend}`,
      origin: insertion.origin,
      facts: [costly.error, costly.cost, ...(needed === undefined ? [] : [needed])],
      related: () => costRelated(view, costly),
      fixes: () =>
        needed === undefined
          ? []
          : [
              {
                title: `Insert it ${showFact(needed)}: probe and bore have to allow it`,
                kind: 'choice',
                edits: [setLength(mounting, 'insertion', insertion, needed)],
              },
            ],
    },
  ];
}
