/** The points that measure in a space. They are told apart once for all rules, since a site may have a thousand. */
import { remembered } from '../../base/remembered.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import type { SpaceEvaluation } from '../../evaluate/space.ts';
import type { SiteView } from '../rule.ts';

/** In the order of the file. */
export function pointsOfSpace(view: SiteView, space: SpaceEvaluation): readonly PointEvaluation[] {
  return pointsBySpace(view).get(space) ?? [];
}

const pointsBySpace = remembered(({ points }: SiteView): ReadonlyMap<SpaceEvaluation, readonly PointEvaluation[]> => {
  const bySpace = new Map<SpaceEvaluation, PointEvaluation[]>();
  for (const point of points) {
    if (point.space === undefined) continue;
    const others = bySpace.get(point.space);
    if (others === undefined) bySpace.set(point.space, [point]);
    else others.push(point);
  }
  return bySpace;
});
