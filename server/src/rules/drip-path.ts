import { humidityAtUnheatedSensor } from '../evaluate/dryness/dryness.ts';
import { unheatedHumidityLimit } from '../evaluate/dryness/limits.ts';
import type { Fact } from '../evaluate/facts/fact.ts';
import { isKnown, type KnownFact, showFact } from '../evaluate/facts/fact.ts';
import { broken } from '../evaluate/facts/limit.ts';
import { fittingSurface } from '../evaluate/mounting/fitting-facts.ts';
import { fittingStaysDry, wallStaysDry } from '../evaluate/mounting/limits.ts';
import { wallSurface } from '../evaluate/mounting/wall-facts.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { replaceScalar } from '../syntax/edit.ts';
import type { Rule } from './rule.ts';
import { worstPhase } from './support/related.ts';
import { atCorner, inCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'drip-path',
  group: 'Mounting',
  severity: 'warning',
  title: 'The probe is mounted so that condensate runs along its stem to the sensor.',
  why: 'A drop that reaches the sensor holds it at saturation for hours, whatever the air does.',
  mend: 'Mount the probe with its head down, so that water leaves over the tip; insulate the fitting.',
  leavesAlone:
    'Horizontal probes whose fitting is insulated, or whose fitting insulation alone would keep dry: insulation-missing speaks of those. Probes in sample lines, and air that never condenses.',
  sources: ['common practice, no source'],
  facts: [
    humidityAtUnheatedSensor,
    fittingSurface.margin,
    fittingSurface.innerSurface,
    wallSurface.margin,
    wallSurface.innerSurface,
  ],
  fixes: ['choice'],
  check: {
    point: (view) => {
      const mounting = view.point.humidityProbe?.value.mounting?.value;
      const attitude = mounting?.attitude;
      if (mounting === undefined || attitude === undefined || mounting.path?.value === 'sample-line') return [];
      const wet = attitude.value === 'head-up' ? condensesSomewhere(view) : bareFittingCondenses(view);
      if (attitude.value === 'head-down' || wet === undefined) return [];
      const edits = [replaceScalar(attitude.cursor, 'head-down')];
      return [
        {
          message: () =>
            `The probe is mounted ${attitude.value === 'head-up' ? 'with its head up' : 'horizontally'}, and ${wet.words}: what condenses runs along the stem to the sensor. Mount it with the head down.`,
          origin: attitude.origin,
          facts: [wet.fact],
          related: () => worstPhase(view.space, wet.fact),
          fixes: () => [{ title: 'Mount it with the head down: it needs another bore', kind: 'choice', edits }],
        },
      ];
    },
  },
};

interface Wet {
  readonly fact: KnownFact;
  readonly words: string;
}

/** Wherever condensate comes from, it runs down to the sensor of a probe whose head is up. */
function condensesSomewhere(view: PointEvaluation): Wet | undefined {
  const humidity = broken(unheatedHumidityLimit, view)?.fact;
  if (humidity !== undefined)
    return { fact: humidity, words: `the air reaches ${showFact(humidity)}${atCorner(humidity)}` };
  return fittingCondenses(view, 'the fitting') ?? wallCondenses(view);
}

/** Along a level stem only what condenses at a bare fitting is likely to run. */
function bareFittingCondenses(view: PointEvaluation): Wet | undefined {
  const { facts, point } = view;
  const insulation = point.humidityProbe?.value.mounting?.value.insulation;
  const bare = insulation === undefined || insulation.value.value <= 0;
  if (!bare || isKnown(facts.get(fittingSurface.insulationNeeded))) return undefined;
  return fittingCondenses(view, 'the bare fitting');
}

function fittingCondenses(view: PointEvaluation, words: string): Wet | undefined {
  if (broken(fittingStaysDry, view) === undefined) return undefined;
  return belowDewPoint(view.facts.get(fittingSurface.innerSurface), words);
}

function wallCondenses({ space }: PointEvaluation): Wet | undefined {
  if (space === undefined || broken(wallStaysDry, space) === undefined) return undefined;
  return belowDewPoint(space.facts.get(wallSurface.innerSurface), 'the wall');
}

function belowDewPoint(surface: Fact | undefined, words: string): Wet | undefined {
  if (!isKnown(surface)) return undefined;
  return {
    fact: surface,
    words: `${words} is at ${showFact(surface)} inside, below the dew point${inCorner(surface)}`,
  };
}
