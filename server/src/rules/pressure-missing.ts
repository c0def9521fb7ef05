import { pressureFromAltitude, pressureToGive } from '../evaluate/air/pressure-facts.ts';
import type { SpaceEvaluation } from '../evaluate/air/space.ts';
import { isKnown, type KnownFact, showFact } from '../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { pressureEffect } from '../evaluate/resolved/report-range.ts';
import type { ReportEvaluation } from '../evaluate/resolved/resolved-point.ts';
import { showQuantity, writeQuantity } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import { appendPair } from '../syntax/edit.ts';
import type { FindingDraft, FixDraft, Rule } from './rule.ts';
import { pointsOfSpace } from './support/points-of-space.ts';
import { atCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'pressure-missing',
  group: 'Quantities',
  severity: 'warning',
  title: 'A space gives no pressure, and a point in it reports a quantity that depends on it.',
  why: 'Mixing ratio, volume fraction and the dew point at another pressure move in proportion to the pressure; wet bulb and enthalpy move with it. The altitude gives the mean outdoor pressure, and neither the weather nor a fan.',
  mend: 'Give the pressure of the space, or that of the report; a range where it varies.',
  leavesAlone:
    'Relative humidity, dew point, frost point and vapour pressure, which need no pressure. It is one finding for each space, however many points need its pressure.',
  sources: ['ISO 2533:1975', 'weather of 3 kPa to either side: common practice, no source'],
  facts: [pressureFromAltitude, pressureToGive, pressureEffect],
  fixes: ['safe', 'choice'],
  check: {
    site: (view) =>
      view.spaces.flatMap((space) =>
        missing(
          space,
          pointsOfSpace(view, space).filter(({ entry }) => !entry.broken),
        ),
      ),
  },
};

interface Need {
  readonly point: PointEvaluation;
  readonly evaluated: ReportEvaluation;
  readonly effect: KnownFact;
}

function missing(space: SpaceEvaluation, points: readonly PointEvaluation[]): readonly FindingDraft[] {
  const computed = space.facts.get(pressureFromAltitude);
  if (!isKnown(computed)) return [];
  const [first, ...others] = points.flatMap(needsOf);
  if (first === undefined) return [];
  const { altitude } = space.settings;
  const from =
    altitude === undefined
      ? 'as at sea level, since the site gives no altitude'
      : `from the altitude of ${showQuantity(altitude.value.value, 'length')}`;
  return [
    {
      message: () =>
        `The ${quantityOf(first)} of ${first.point.tag} needs the pressure, and ${space.id} gives none: ${showFact(computed)} is taken, ${from}, and the weather alone moves the ${quantityOf(first)} by up to ${showFact(first.effect)}${atCorner(first.effect)}. Give the pressure of the space.`,
      origin: space.keyOrigin,
      subject: space.id,
      facts: [computed, first.effect, ...others.map(({ effect }) => effect)],
      related: () =>
        [first, ...others].map((need) => ({
          message: `The ${quantityOf(need)} of ${need.point.tag} needs it; the weather moves it by up to ${showFact(need.effect)}.`,
          origin: need.evaluated.report.keyOrigin ?? need.evaluated.report.origin,
        })),
      fixes: () => [...insertIntoSpace(space), ...(others.length === 0 ? insertIntoReport(space, first) : [])],
    },
  ];
}

function needsOf(point: PointEvaluation): readonly Need[] {
  return point.reports.flatMap((evaluated) => {
    const effect = point.facts.get(pressureEffect(evaluated.quantity));
    return isKnown(effect) ? [{ point, evaluated, effect }] : [];
  });
}

function quantityOf({ evaluated }: Need): string {
  return quantityInfo(evaluated.quantity).title;
}

/** Safe only where the altitude is known: it says in the file what is computed with anyway. */
function insertIntoSpace(space: SpaceEvaluation): readonly FixDraft[] {
  const rounded = space.facts.get(pressureToGive);
  if (!isKnown(rounded)) return [];
  const text = writeQuantity(rounded.value, rounded.dimension);
  const edits = [appendPair(space.located.cursor, 'pressure', text)];
  return space.pressure.source === 'altitude'
    ? [{ title: `Give ${space.id} the pressure at its altitude, ${showFact(rounded)}`, kind: 'safe', edits }]
    : [{ title: `Give ${space.id} the pressure at sea level, ${showFact(rounded)}`, kind: 'choice', edits }];
}

function insertIntoReport(space: SpaceEvaluation, { evaluated }: Need): readonly FixDraft[] {
  const rounded = space.facts.get(pressureToGive);
  if (!isKnown(rounded)) return [];
  const edits = [appendPair(evaluated.report.cursor, 'pressure', writeQuantity(rounded.value, rounded.dimension))];
  return [
    {
      title: `Give ${showFact(rounded)} to this report alone; others of the space go on without`,
      kind: 'choice',
      edits,
    },
  ];
}
