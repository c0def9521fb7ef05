import { airTemperatureCost, airTemperatureError } from '../evaluate/air-temperature/cost.ts';
import { insulationNeeded } from '../evaluate/air-temperature/remedies.ts';
import { isKnown, type KnownFact, showFact } from '../evaluate/facts/fact.ts';
import { broken } from '../evaluate/facts/limit.ts';
import { fittingSurface } from '../evaluate/mounting/fitting-facts.ts';
import { fittingStaysDry } from '../evaluate/mounting/limits.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { ThermometerKind } from '../evaluate/resolved/thermometer.ts';
import type { Located } from '../model/located.ts';
import type { AirTemperatureProbeMounting, HumidityProbeMounting } from '../model/model-types.generated.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import type { FindingDraft, FixDraft, Rule } from './rule.ts';
import { costliestError, costRelated, costWords, neededByAll } from './support/costly-error.ts';
import { mountingOf, probeWords, setLength, THERMOMETERS } from './support/mounting.ts';
import { worstPhase } from './support/related.ts';
import { inCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'insulation-missing',
  group: 'Mounting',
  severity: 'warning',
  title: 'The fitting of a probe needs more insulation: it is below the dew point inside, or the wall pulls the probe.',
  why: 'Water that condenses on a cold fitting runs along the stem to the sensor, and a cold fitting draws heat from the sensor.',
  mend: 'Put insulation of the thickness computed around the fitting and the part of the stem outside the wall.',
  leavesAlone:
    'Insulated fittings in air so close to its dew point that no usual collar, up to 50 mm, keeps them dry: there the attitude counts, and drip-path looks at it. Points whose wall or surroundings are not given, and sample lines.',
  sources: ['ISO 6946', 'collars of up to 50 mm: common practice, no source'],
  facts: [
    fittingSurface.margin,
    fittingSurface.innerSurface,
    fittingSurface.insulationNeeded,
    airTemperatureError['stem-conduction'],
    airTemperatureCost['stem-conduction'],
    insulationNeeded,
  ],
  fixes: ['choice'],
  check: {
    point: (view) => {
      const condensing = condensingFitting(view);
      const pulled = THERMOMETERS.flatMap((thermometer) =>
        thermometer === 'own-head' && condensing.length > 0 ? [] : pulledByWall(view, thermometer),
      );
      return [...condensing, ...pulled];
    },
  },
};

type Mounting = Located<HumidityProbeMounting | AirTemperatureProbeMounting>;

function condensingFitting(view: PointEvaluation): readonly FindingDraft[] {
  const mounting = view.point.humidityProbe?.value.mounting;
  const margin = broken(fittingStaysDry, view)?.fact;
  const [surface, needed] = [fittingSurface.innerSurface, fittingSurface.insulationNeeded].map((key) =>
    view.facts.get(key),
  );
  if (mounting === undefined || margin?.at === undefined || !isKnown(surface)) return [];
  const { insulation } = mounting.value;
  const bare = insulation === undefined || insulation.value.value <= 0;
  const thickness = isKnown(needed) ? needed : undefined;
  if (thickness === undefined && !bare) return [];
  const dewPoint = showQuantity(margin.at.dewPointCelsius, 'temperature');
  const mend =
    thickness === undefined
      ? 'No usual collar keeps it dry in this air, but insulation lessens what condenses.'
      : `Insulate it with ${showFact(thickness)}.`;
  return [
    {
      message: () =>
        `The ${bare ? 'bare ' : ''}fitting of the humidity probe is at ${showFact(surface)} inside, below the dew point of ${dewPoint}${inCorner(margin)}, and condensate can run along the stem. ${mend}`,
      origin: placeOf(mounting),
      facts: thickness === undefined ? [surface] : [surface, thickness],
      related: () => [...worstPhase(view.space, margin), ...wallIs(view)],
      fixes: () => insulate(mounting, thickness),
    },
  ];
}

function pulledByWall(view: PointEvaluation, thermometer: ThermometerKind): readonly FindingDraft[] {
  const costly = costliestError(view, thermometer, 'stem-conduction');
  const needed = neededByAll(view, thermometer, insulationNeeded);
  const mounting = mountingOf(view, thermometer);
  if (costly === undefined || needed === undefined || mounting === undefined) return [];
  return [
    {
      message: () =>
        `The wall pulls the ${probeWords(thermometer)} from the air by ${costWords(costly)}, and no usual insertion would do. Insulate its fitting with ${showFact(needed)}.`,
      origin: placeOf(mounting),
      facts: [costly.error, costly.cost, needed],
      related: () => costRelated(view, costly),
      fixes: () => insulate(mounting, needed),
    },
  ];
}

function placeOf(mounting: Mounting) {
  return mounting.value.insulation?.origin ?? mounting.keyOrigin ?? mounting.origin;
}

function insulate(mounting: Mounting, thickness: KnownFact | undefined): readonly FixDraft[] {
  if (thickness === undefined) return [];
  const title = `Insulate the fitting with ${showFact(thickness)}; it must be fitted on site`;
  return [{ title, kind: 'choice', edits: [setLength(mounting, 'insulation', mounting.value.insulation, thickness)] }];
}

function wallIs({ space }: PointEvaluation) {
  const wall = space?.located.value.wall;
  return wall === undefined ? [] : [{ message: 'The wall is here.', origin: wall.keyOrigin ?? wall.origin }];
}
