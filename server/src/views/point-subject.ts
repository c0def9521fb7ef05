/** The point that a view is about: that of the cursor, else the first in the space of the cursor, else the first. */
import type { Analysis } from '../analysis/analysis.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { locate } from '../syntax/locate.ts';

export function pointAt({ content, parsed }: Analysis, offset: number): PointEvaluation | undefined {
  if (content.kind !== 'site') return undefined;
  const points = [...content.site.points.values()];
  const [map, name] = locate(parsed.tree, offset)?.path ?? [];
  const inSpace = map === 'spaces' ? points.find(({ space }) => space?.id === name) : undefined;
  const atCursor = map === 'points' ? points.find(({ tag }) => tag === name) : undefined;
  return atCursor ?? inSpace ?? points[0];
}

/** `K2-MT-101, kiln 2, air on the load` */
export function nameOf({ tag, point }: PointEvaluation): string {
  return point.title === undefined ? tag : `${tag}, ${point.title.value}`;
}
