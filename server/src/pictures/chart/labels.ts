/** Labels in the plane of a chart, each at the first of its spots where it covers no other; without room, none. */
import type { MarkupElement } from '../../base/markup.ts';
import { CHARACTER_WIDTH, label } from '../svg.ts';
import type { ChartItem, LabelSpot } from './item.ts';
import { FRAME } from './plane.ts';

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const [ABOVE_LINE, BELOW_LINE] = [11, 4];

/** @param items what matters most first */
export function placeLabels(items: readonly Pick<ChartItem, 'label' | 'spots'>[]): readonly MarkupElement[] {
  const taken: Box[] = [];
  return items.flatMap((item) => {
    const width = item.label.length * CHARACTER_WIDTH;
    const spot = item.spots.find((candidate) => {
      const box = boxOf(candidate, width);
      return isInside(box) && !taken.some((other) => overlap(box, other));
    });
    if (spot === undefined) return [];
    taken.push(boxOf(spot, width));
    return [label(spot.at, item.label, spot.anchor === 'start' ? {} : { class: spot.anchor })];
  });
}

function boxOf({ at: [x, y], anchor }: LabelSpot, width: number): Box {
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { left, right: left + width, top: y - ABOVE_LINE, bottom: y + BELOW_LINE };
}

function isInside({ left, right, top, bottom }: Box): boolean {
  return left >= FRAME.left + 2 && right <= FRAME.right - 2 && top >= FRAME.top + 2 && bottom <= FRAME.bottom - 2;
}

function overlap(one: Box, other: Box): boolean {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
}
