import { remembered } from '../base/remembered.ts';
import { overPressure, overPressureLimit } from '../evaluate/air/pressure-facts.ts';
import type { SpaceEvaluation } from '../evaluate/air/space.ts';
import { cautionsFor } from '../evaluate/cautions.ts';
import { isKnown, type KnownFact, showFact } from '../evaluate/facts/fact.ts';
import { broken, showBound } from '../evaluate/facts/limit.ts';
import { isUnread } from '../evaluate/facts/unread.ts';
import { burnLimitPassed } from '../evaluate/mounting/hot-surface.ts';
import { wallOuterSurface } from '../evaluate/mounting/wall-facts.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { HAZARDOUS_VOLTAGE, isHazardousVoltage } from '../evaluate/supply/limits.ts';
import type { Hazard } from '../model/model-types.generated.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import { appendPair } from '../syntax/edit.ts';
import { appendItem } from '../syntax/edit-list.ts';
import type { FindingDraft, FixDraft, Related, Rule } from './rule.ts';
import { pointsOfSpace } from './support/points-of-space.ts';
import { atCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'hazard-caution',
  group: 'Housekeeping',
  severity: 'information',
  title: 'The numbers of a space imply a hazard that it does not name.',
  why: 'Whoever is sent to fit or check a probe reads the report and the handover plan. A hazard that the space names goes with its caution into both; one that only follows from the numbers does not.',
  mend: 'Name the hazard under hazards of the space. Local codes and licensed practice decide what has to be done; Dewright is no safety device.',
  leavesAlone:
    'Hazards that the space names: their cautions stand in hover, report and handover plan. Hot air behind a wall that is not hot outside, and whatever no number tells: gases, confined spaces, flammable zones.',
  sources: [
    'ISO 13732-1, burn thresholds of bare metal for 10 minutes and for half a second, at second hand',
    'Directive 2014/68/EU applies above 0.5 bar over the air outside; at second hand',
    'IEC 61140, extra-low voltage up to 50 V a.c. (120 V d.c.); at second hand',
  ],
  facts: [wallOuterSurface, overPressure],
  fixes: ['choice'],
  check: {
    site: (view) => view.spaces.flatMap((space) => unnamed(space, pointsOfSpace(view, space))),
  },
};

/** Something that people can be hurt by, as the numbers tell it. */
interface Implied {
  readonly hazard: Hazard;
  /** The start of a sentence. */
  readonly reason: string;
  readonly facts: readonly KnownFact[];
  readonly related: readonly Related[];
}

function unnamed(space: SpaceEvaluation, points: readonly PointEvaluation[]): readonly FindingDraft[] {
  const named = space.located.value.hazards;
  if (isUnread(space.located, 'hazards', named) || hasUnreadItems(space)) return [];
  const implied = [...hotSurface(space), ...pressure(space), ...voltage(points)].filter(
    ({ hazard }) => !named?.value.some(({ value }) => value === hazard),
  );
  if (implied.length === 0) return [];
  const hazards = implied.map(({ hazard }) => hazard);
  const reasons = implied.map(({ reason }) => reason).join(', and ');
  return [
    {
      message: () =>
        `${reasons}, and the space does not name ${hazards.join(' and ')} among its hazards. ${cautionsFor(hazards).join(' ')}`,
      origin: space.keyOrigin,
      subject: space.id,
      facts: implied.flatMap(({ facts }) => facts),
      related: () => implied.flatMap(({ related }) => related),
      fixes: () => [nameHazards(space, hazards)],
    },
  ];
}

function hotSurface({ facts }: SpaceEvaluation): readonly Implied[] {
  const surface = facts.get(wallOuterSurface);
  const limit = isKnown(surface) ? burnLimitPassed(surface.value) : undefined;
  if (!isKnown(surface) || limit === undefined) return [];
  const from = showQuantity(limit.fromCelsius, 'temperature');
  const reason = `The wall may be ${showFact(surface)} outside${atCorner(surface)}, where bare metal from ${from} on burns in ${limit.contact}`;
  return [{ hazard: 'hot-surface', reason, facts: [surface], related: [] }];
}

function pressure(space: SpaceEvaluation): readonly Implied[] {
  const over = broken(overPressureLimit, space);
  if (over === undefined) return [];
  const given = space.located.value.pressure;
  const limit = showBound(over.bound);
  return [
    {
      hazard: 'pressure',
      reason: `The pressure may stand ${showFact(over.fact)} above the air outside, more than ${limit}`,
      facts: [over.fact],
      related: given === undefined ? [] : [{ message: 'The pressure is given here.', origin: given.origin }],
    },
  ];
}

/** One point says it for all of the space. */
function voltage(points: readonly PointEvaluation[]): readonly Implied[] {
  return points.flatMap(voltageOfPoint).slice(0, 1);
}

const voltageOfPoint = remembered(({ tag, point }: PointEvaluation): readonly Implied[] => {
  const supply = point.supply?.value.voltage;
  if (supply === undefined || !isHazardousVoltage(supply.value.value)) return [];
  const [fed, limit] = [supply.value.value, HAZARDOUS_VOLTAGE].map((volts) => showQuantity(volts, 'voltage'));
  const related = [{ message: 'The voltage is given here.', origin: supply.origin }];
  return [{ hazard: 'electrical', reason: `${tag} is fed with ${fed}, more than ${limit}`, facts: [], related }];
});

function hasUnreadItems({ located }: SpaceEvaluation): boolean {
  const { hazards } = located.value;
  const node = hazards?.cursor.node;
  return node?.kind === 'list' && node.items.length !== hazards?.value.length;
}

function nameHazards({ located }: SpaceEvaluation, hazards: readonly Hazard[]): FixDraft {
  const given = located.value.hazards;
  const edits =
    given === undefined
      ? [appendPair(located.cursor, 'hazards', `[${hazards.join(', ')}]`)]
      : hazards.map((hazard) => appendItem(given.cursor, hazard));
  return {
    title: `Name ${hazards.join(', ')}, so that report and handover plan carry the caution`,
    kind: 'choice',
    edits,
  };
}
