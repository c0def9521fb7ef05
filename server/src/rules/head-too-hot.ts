import { highestHeadTemperature, riseToSet } from '../evaluate/dryness/dryness.ts';
import { headTemperatureLimit } from '../evaluate/dryness/limits.ts';
import { bearsAirOf } from '../evaluate/equipment/model-limits.ts';
import { type KnownFact, showFact } from '../evaluate/facts/fact.ts';
import { broken, showBound } from '../evaluate/facts/limit.ts';
import { modelHasNoHeater, ownModelHeats } from '../evaluate/heated-models.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { writeQuantity } from '../quantity/format-quantity.ts';
import { replaceScalar } from '../syntax/edit.ts';
import type { FixDraft, Rule } from './rule.ts';
import { riseWanted, switchHeaterOff, useModelThatHeats } from './support/heater-fixes.ts';
import { worstPhase } from './support/related.ts';
import { atCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'head-too-hot',
  group: 'Dryness and heater',
  severity: 'error',
  title: "The air and the heater's rise together take the head over the temperature that its model bears.",
  why: 'A head over its range drifts and ages, and may fail.',
  mend: 'Lower the rise where a lower one still keeps the sensor dry, or choose a model that bears more heat.',
  leavesAlone: 'Air that alone is too hot for the model: outside-range speaks of that.',
  sources: ["the maker's data sheet, as the kit gives it"],
  facts: [highestHeadTemperature, riseToSet],
  fixes: ['choice'],
  check: {
    point: (view) => {
      const { heater, space, humidityProbeModel: ref } = view;
      const range = ref?.model?.value.ranges?.value.temperature;
      const tooHot = broken(headTemperatureLimit, view);
      if (space === undefined || heater.rise === undefined || ref === undefined || range === undefined) return [];
      if (tooHot === undefined || !bearsAirOf(space, range) || modelHasNoHeater(view)) return [];
      const hottest = tooHot.fact;
      const needed = riseWanted(view);
      const lower = needed !== undefined && ownModelHeats(view, needed.value) ? needed : undefined;
      const limit = showBound(tooHot.bound);
      return [
        {
          message: () =>
            `The head reaches ${showFact(hottest)}${atCorner(hottest)}, over the ${limit} that the model ${ref.id} bears. ${mendWords(needed, lower)}`,
          origin: heater.rise.origin,
          facts: lower === undefined ? [hottest] : [hottest, lower],
          related: () => [
            ...worstPhase(space, hottest),
            { message: `The model bears up to ${limit}.`, origin: range.origin, file: ref.file },
          ],
          fixes: () => [
            ...lowerRise(view, lower),
            ...(needed === undefined ? switchHeaterOff(view) : []),
            ...useModelThatHeats(view),
          ],
        },
      ];
    },
  },
};

function mendWords(needed: KnownFact | undefined, lower: KnownFact | undefined): string {
  if (needed === undefined) return 'The sensor needs no heat: switch the heater off.';
  if (lower === undefined) return 'Choose a model that bears more heat.';
  return `Lower the rise to ${showFact(lower)}, which still keeps the sensor dry.`;
}

function lowerRise({ heater }: PointEvaluation, lower: KnownFact | undefined): readonly FixDraft[] {
  if (lower === undefined || heater.rise === undefined) return [];
  const edits = [replaceScalar(heater.rise.cursor, writeQuantity(lower.value, lower.dimension))];
  return [{ title: `Lower the rise to ${showFact(lower)}, which still keeps the sensor dry`, kind: 'choice', edits }];
}
