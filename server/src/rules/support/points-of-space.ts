/** The points that measure in a space. They are told apart once for all rules, since a site may have a thousand. */
import { groupedBy } from '../../base/grouped.ts';
import { remembered } from '../../base/remembered.ts';
import type { SpaceEvaluation } from '../../evaluate/air/space.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import type { SiteView } from '../rule.ts';

/** In the order of the file. */
export function pointsOfSpace(view: SiteView, space: SpaceEvaluation): readonly PointEvaluation[] {
  return pointsBySpace(view).get(space) ?? [];
}

const pointsBySpace = remembered(({ points }: SiteView) => groupedBy(points, ({ space }) => space));
