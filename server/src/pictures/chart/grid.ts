/** The frame of the moist-air chart: its axes with their marks, the lines of equal humidity, and the edge of saturation. */
import type { MarkupElement, MarkupNode } from '../../base/markup.ts';
import { remembered } from '../../base/remembered.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { quantityInfo } from '../../quantity/quantities.ts';
import { placeOn, ticksBetween } from '../scale.ts';
import { group, label, line, polygon, polyline, rectangle, type XY } from '../svg.ts';
import { lineOfQuantity } from './curves.ts';
import { type ChartPlane, FRAME } from './plane.ts';

/** Fractions, saturation first. */
const HUMIDITIES = [1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1];
/** Between the labels of two neighbouring lines. Pixels. */
const [ROOM_ACROSS, ROOM_DOWN] = [56, 13];

/** What lies in the plane behind everything. */
export function gridLines(plane: ChartPlane): readonly MarkupElement[] {
  const { left, right, top, bottom } = FRAME;
  const across = temperatureTicks(plane).map((celsius) => placeOn(plane.temperature, celsius));
  const up = contentTicks(plane).map((content) => placeOn(plane.humidity, content));
  const lines = humidityLines(plane);
  const saturation = lines[0]?.points ?? [];
  return [
    polygon([[left, bottom], ...saturation, [right, top], [left, top]], { class: 'beyond' }),
    group({ class: 'grid' }, [
      ...across.map((x) => line([x, top], [x, bottom])),
      ...up.map((y) => line([left, y], [right, y])),
      ...lines.map(({ points }) => polyline(points)),
    ]),
    polyline(saturation, { class: 'curve saturation' }),
  ];
}

/** What stands around the plane. */
export function axes(plane: ChartPlane): readonly MarkupElement[] {
  const { left, right, top, bottom } = FRAME;
  const { title, dimension } = quantityInfo(plane.axis);
  return [
    rectangle([left, top], [right, bottom], { class: 'axis' }),
    group({ class: 'quiet middle' }, [
      ...temperatureTicks(plane).map((celsius) =>
        label([placeOn(plane.temperature, celsius), bottom + 16], showQuantity(celsius, 'temperature')),
      ),
    ]),
    group({ class: 'quiet end' }, [
      ...contentTicks(plane).map((content) =>
        label([left - 6, placeOn(plane.humidity, content) + 4], showQuantity(content, dimension)),
      ),
    ]),
    label([(left + right) / 2, bottom + 36], 'air temperature', { class: 'middle' }),
    label([0, 0], title, {
      class: 'middle',
      transform: `translate(16 ${(top + bottom) / 2}) rotate(-90)`,
    }),
    group({ class: 'quiet' }, humidityLabels(plane)),
  ];
}

const humidityLines = remembered((plane: ChartPlane) =>
  HUMIDITIES.map((value) => ({ value, points: lineOfQuantity(plane, 'relative-humidity', value) })),
);

/** Where the lines of equal humidity leave the frame, as many as have room there. */
function humidityLabels(plane: ChartPlane): readonly MarkupNode[] {
  const placed: XY[] = [];
  return humidityLines(plane).flatMap(({ value, points }) => {
    const end = endInFrame(points);
    if (end === undefined || placed.some((other) => isNear(end, other))) return [];
    placed.push(end);
    const text = showQuantity(value, 'relative-humidity');
    const [x, y] = end;
    return y <= FRAME.top ? [label([x, y - 6], text, { class: 'middle' })] : [label([x + 5, y + 4], text)];
  });
}

function isNear([x, y]: XY, [otherX, otherY]: XY): boolean {
  return Math.abs(x - otherX) < ROOM_ACROSS && Math.abs(y - otherY) < ROOM_DOWN;
}

/** Where a rising line leaves the frame, at its top or at its right; undefined where it passes below. */
function endInFrame(points: readonly XY[]): XY | undefined {
  const above = points.findIndex(([, y]) => y < FRAME.top);
  if (above === -1) return points.findLast(([, y]) => y <= FRAME.bottom);
  const [from, to] = [points[above - 1], points[above]];
  if (from === undefined || to === undefined) return undefined;
  const share = (FRAME.top - from[1]) / (to[1] - from[1]);
  return [from[0] + share * (to[0] - from[0]), FRAME.top];
}

function temperatureTicks({ temperature: { low, high } }: ChartPlane): readonly number[] {
  return ticksBetween(low, high, 'temperature', 8);
}

function contentTicks({ humidity: { low, high }, axis }: ChartPlane): readonly number[] {
  return ticksBetween(low, high, quantityInfo(axis).dimension, 8);
}
