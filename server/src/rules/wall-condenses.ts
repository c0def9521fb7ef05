import type { SpaceEvaluation } from '../evaluate/air/space.ts';
import { isKnown, type KnownFact, showFact } from '../evaluate/facts/fact.ts';
import { broken, showBound } from '../evaluate/facts/limit.ts';
import { wallMargin, wallStaysDry } from '../evaluate/mounting/limits.ts';
import { wallSurface } from '../evaluate/mounting/wall-facts.ts';
import type { Located } from '../model/located.ts';
import type { Wall } from '../model/model-types.generated.ts';
import { appendPair } from '../syntax/edit.ts';
import type { FindingDraft, FixDraft, Rule } from './rule.ts';
import { setLength } from './support/mounting.ts';
import { worstPhase } from './support/related.ts';
import { inCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'wall-condenses',
  group: 'Mounting',
  severity: 'warning',
  title: 'The inner surface of a wall comes closer to the dew point than the margin.',
  why: 'A wall below the dew point runs wet. The water reaches fittings and probes, and near the wall the air is drier than where the process is.',
  mend: 'Insulate the wall with the thickness computed; where the air itself is that close to its dew point, let the wall drain away from the probes.',
  leavesAlone: 'Walls whose layers or whose surroundings are not given. It is one finding for each space.',
  sources: ['ISO 6946'],
  facts: [wallSurface.margin, wallSurface.innerSurface, wallSurface.insulationNeeded],
  fixes: ['choice'],
  check: {
    space: (space) => {
      const wall = space.located.value.wall;
      return wall === undefined ? [] : condensing(space, wall);
    },
  },
};

function condensing(space: SpaceEvaluation, wall: Located<Wall>): readonly FindingDraft[] {
  const close = broken(wallMargin, space);
  const [surface, needed] = [wallSurface.innerSurface, wallSurface.insulationNeeded].map((key) => space.facts.get(key));
  if (close === undefined || !isKnown(surface)) return [];
  const { fact: margin, bound } = close;
  const asked = space.settings.margin.origin;
  const below = broken(wallStaysDry, space) !== undefined;
  const relation = below ? 'below the dew point' : `only ${showFact(margin)} above the dew point`;
  const least = showBound(bound);
  const thickness = isKnown(needed) ? needed : undefined;
  const mend =
    thickness === undefined
      ? 'No insulation keeps the margin in air so close to its dew point: let the wall drain away from the probes.'
      : `Insulate it with ${showFact(thickness)} in all.`;
  return [
    {
      message: () =>
        `The inner surface of the wall is at ${showFact(surface)}${inCorner(surface)}, ${relation}; the margin asked is ${least}. ${mend}`,
      origin: wall.keyOrigin ?? wall.origin,
      facts: [surface, ...(below ? [] : [margin]), ...(thickness === undefined ? [] : [thickness])],
      related: () => [
        ...worstPhase(space, margin),
        ...(asked === undefined ? [] : [{ message: `The margin asked is ${least}.`, origin: asked }]),
      ],
      fixes: () => insulate(wall, thickness),
    },
  ];
}

/** A wall that had no insulation gets mineral wool, with which the thickness was computed. */
function insulate(wall: Located<Wall>, thickness: KnownFact | undefined): readonly FixDraft[] {
  if (thickness === undefined) return [];
  const { insulation, insulationMaterial } = wall.value;
  const material = insulationMaterial?.value ?? 'mineral-wool';
  const edits = [
    setLength(wall, 'insulation', insulation, thickness),
    ...(insulationMaterial === undefined ? [appendPair(wall.cursor, 'insulation-material', material)] : []),
  ];
  return [
    { title: `Insulate the wall with ${showFact(thickness)} of ${material}; it must be built`, kind: 'choice', edits },
  ];
}
