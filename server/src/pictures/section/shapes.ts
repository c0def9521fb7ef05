/** The shapes that a section is put together from, in places of the section. */
import type { Attributes, MarkupElement } from '../../base/markup.ts';
import { polygon, polyline, type XY } from '../svg.ts';
import type { SectionFrame, SectionPlace } from './frame.ts';

/** A stretch along the stem and one across it, m. */
interface SectionBox {
  readonly along: readonly [from: number, to: number];
  readonly across: readonly [from: number, to: number];
}

export function boxIn(frame: SectionFrame, { along, across }: SectionBox, attributes: Attributes): MarkupElement {
  const corners: readonly SectionPlace[] = [
    { along: along[0], across: across[0] },
    { along: along[1], across: across[0] },
    { along: along[1], across: across[1] },
    { along: along[0], across: across[1] },
  ];
  return polygon(
    corners.map((corner) => frame.at(corner)),
    attributes,
  );
}

/** px from one stroke of a hatching to the next, and how far a stroke reaches. */
const STROKE_STEP = 7;
const STROKE = 7;

/** Strokes off a wet surface, which say without colour that water stands on it. @param side of the line, −1 or 1 */
export function wetStrokes(from: XY, to: XY, side: number): readonly MarkupElement[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length === 0) return [];
  const [x, y] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const count = Math.max(1, Math.floor(length / STROKE_STEP));
  return Array.from({ length: count }, (_, index) => {
    const at = ((index + 0.5) / count) * length;
    const start: XY = [from[0] + x * at, from[1] + y * at];
    // Slanted, so that strokes are no ticks of a scale.
    const end: XY = [start[0] + (x * 0.5 - y * side) * STROKE, start[1] + (y * 0.5 + x * side) * STROKE];
    return polyline([start, end], { class: 'wet' });
  });
}

/** On which side of a line a place lies, as `wetStrokes` counts. */
export function sideOf(from: XY, to: XY, place: XY): number {
  return Math.sign((to[0] - from[0]) * (place[1] - from[1]) - (to[1] - from[1]) * (place[0] - from[0]));
}
