import { riseToSet } from '../evaluate/dryness/dryness.ts';
import { largestRiseSuffices, riseAsked, riseReachesNeed, someRiseIsReached } from '../evaluate/dryness/limits.ts';
import { largestRiseToAsk, riseReachable } from '../evaluate/dryness/reachable-rise.ts';
import { isKnown, type KnownFact, showFact } from '../evaluate/facts/fact.ts';
import { broken, kept } from '../evaluate/facts/limit.ts';
import { modelHasNoHeater } from '../evaluate/heated-models.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { voltageAtProbe } from '../evaluate/supply/facts.ts';
import { heaterVoltageLimit } from '../evaluate/supply/limits.ts';
import { showQuantity, writeQuantity } from '../quantity/format-quantity.ts';
import { replaceScalar } from '../syntax/edit.ts';
import type { FindingDraft, FixDraft, Rule } from './rule.ts';
import { riseWanted } from './support/heater-fixes.ts';
import { worstPhase } from './support/related.ts';
import { atCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'heater-rise-unreachable',
  group: 'Dryness and heater',
  severity: 'warning',
  title: 'The rise asked of the heater, or needed, is more than its power can hold in the air that passes.',
  why: 'Moving air takes the heat away. The head then stays at the rise that its power allows, however much is asked, and the sensor is wetter than planned.',
  mend: 'Ask for a rise that is reached, if it keeps the sensor dry; else choose a model with more power or move the point out of the draught.',
  leavesAlone: 'Supplies on which the heater does not work at all: heater-supply-low speaks of those.',
  sources: [
    'Churchill and Bernstein 1977; Churchill and Chu 1975',
    'heat balance of head and stem: Incropera, sections 3.6 and 9.9',
  ],
  facts: [riseReachable, largestRiseToAsk, riseToSet, voltageAtProbe],
  fixes: ['choice'],
  check: { point: unreachable },
};

function unreachable(view: PointEvaluation): readonly FindingDraft[] {
  const { heater, facts } = view;
  const reachable = facts.get(riseReachable);
  const asked = heater.rise?.value.value;
  const needed = riseWanted(view);
  const model = view.humidityProbeModel?.model?.value.heater?.value;
  const power = model?.power;
  if (!heater.on || !isKnown(reachable) || power === undefined || modelHasNoHeater(view)) return [];
  if (broken(heaterVoltageLimit, view) !== undefined) return [];
  const tooMuchAsked = broken(riseAsked, view) !== undefined;
  if (!tooMuchAsked && (needed === undefined || broken(riseReachesNeed, view) === undefined)) return [];
  const voltage = facts.get(voltageAtProbe);
  const watts = showQuantity(power.value.value, 'power');
  const volts = isKnown(voltage) ? `, with ${showFact(voltage)} at the probe` : '';
  const wanted =
    tooMuchAsked && asked !== undefined
      ? `is asked for ${showQuantity(asked, 'temperature-difference')}`
      : `would have to hold ${needed === undefined ? '' : showFact(needed)}`;
  const mend = lowerRise(view, needed);
  return [
    {
      message: () =>
        `The heater ${wanted}, and its ${watts} reach ${showFact(reachable)}${atCorner(reachable)}${volts}. ${mend.words}`,
      origin: heater.rise?.origin ?? heater.located?.origin ?? view.entry.keyOrigin,
      facts: [
        reachable,
        ...(isKnown(voltage) ? [voltage] : []),
        ...(needed === undefined || tooMuchAsked ? [] : [needed]),
        ...mend.facts,
      ],
      related: () => [
        {
          message: `The heater takes ${watts} at most.`,
          origin: power.origin,
          file: view.humidityProbeModel?.file ?? '',
        },
        ...worstPhase(view.space, reachable),
      ],
      fixes: mend.fixes,
    },
  ];
}

interface Mend {
  readonly words: string;
  readonly facts: readonly KnownFact[];
  readonly fixes: () => readonly FixDraft[];
}

/** Less may be asked where that still keeps the sensor dry. */
function lowerRise(view: PointEvaluation, needed: KnownFact | undefined): Mend {
  const { heater } = view;
  const largest = kept(someRiseIsReached, view)?.fact;
  const suffices = needed === undefined || kept(largestRiseSuffices, view) !== undefined;
  if (largest === undefined || !suffices)
    return { words: 'Choose a model with more power, or move the point into slower air.', facts: [], fixes: () => [] };
  const edits = [
    heater.rise === undefined
      ? undefined
      : replaceScalar(heater.rise.cursor, writeQuantity(largest.value, largest.dimension)),
  ];
  return {
    words: `Ask for ${showFact(largest)}, which keeps the sensor dry.`,
    facts: [largest],
    fixes: () => [
      { title: `Ask for a rise of ${showFact(largest)}, which keeps the sensor dry`, kind: 'choice', edits },
    ],
  };
}
