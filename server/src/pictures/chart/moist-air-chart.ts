/**
 * The moist-air chart of a space: its envelopes, what its sensors see, limits, alarms and checks, over air temperature
 * and humidity content.
 */
import { element, type MarkupElement } from '../../base/markup.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { CHARACTER_WIDTH, circle, drawing, group, label, placeAttributes, shortened } from '../svg.ts';
import { densityItems, recordedAir } from './density.ts';
import { axes, gridLines } from './grid.ts';
import type { ChartItem, ChartSubject } from './item.ts';
import { placeLabels } from './labels.ts';
import { legendOf } from './legend.ts';
import { alarmItems, limitItems } from './limits.ts';
import { phaseItems } from './phases.ts';
import { type ChartPlane, FRAME, type HumidityAxis, planeOf } from './plane.ts';
import { airOverSalts, saltItems } from './salts.ts';
import { airAtSensors, sensorItems } from './sensors.ts';

const WIDTH = 620;

/** The corner of the plane where the axes would name more vapour than air can hold. */
const BEYOND = {
  label: 'above saturation',
  spots: [{ at: [FRAME.left + 10, FRAME.top + 18], anchor: 'start' }],
} as const;

/** The plane of the chart of a space, or undefined where it has no envelope that can be drawn. */
export function chartPlane(axis: HumidityAxis, subject: ChartSubject): ChartPlane | undefined {
  const { space, phases } = subject;
  if (phases.length === 0) return undefined;
  const { low, high } = space.pressure;
  const envelopes = phases.map(({ envelope }) => envelope);
  const pressure = (low + high) / 2;
  const besides = [
    ...airAtSensors(subject, pressure),
    ...airOverSalts(subject, pressure),
    ...recordedAir(subject, pressure),
  ];
  return planeOf(axis, pressure, envelopes, besides);
}

export function moistAirChart(plane: ChartPlane, subject: ChartSubject): MarkupElement {
  const phases = phaseItems(plane, subject);
  const lines = [...limitItems(plane, subject), ...alarmItems(plane, subject)];
  const spots = [...sensorItems(plane, subject), ...saltItems(plane, subject)];
  const title = subject.space.located.value.title?.value ?? subject.space.id;
  const recorded = densityItems(plane, subject);
  const rows = [...phases, ...spots, ...lines, ...recorded];
  const legend = legendOf(rows, FRAME.bottom + 62, WIDTH);
  return drawing({
    width: WIDTH,
    height: legend.bottom,
    title: `Moist-air chart of ${title}`,
    description: rows.map(({ text }) => text).join('. '),
    attributes: { 'data-zooms': true, 'data-reads': true, tabindex: 0 },
    content: [
      label([FRAME.left, 18], shortened(title, (FRAME.right - FRAME.left) / CHARACTER_WIDTH), { class: 'title' }),
      label([FRAME.left, 36], `air at ${pressureText(subject, plane)}`, { class: 'quiet' }),
      inPlane([
        ...gridLines(plane),
        ...recorded.map(markOf),
        ...[...phases].sort(hereLast).map(markOf),
        ...lines.map(markOf),
        ...spots.map(markOf),
      ]),
      ...axes(plane),
      group({ class: 'labels' }, placeLabels([BEYOND, ...spots, ...phases, ...lines])),
      legend.content,
      group({ class: 'spot' }, [circle([0, 0], 5)]),
    ],
  });
}

/** A drawing inside the drawing cuts off what reaches beyond the frame. */
function inPlane(content: readonly MarkupElement[]): MarkupElement {
  const { left: x, top: y, right, bottom } = FRAME;
  const [width, height] = [right - x, bottom - y];
  return element('svg', { x, y, width, height, viewBox: `${x} ${y} ${width} ${height}` }, content);
}

function markOf({ mark, text, place, isHere }: ChartItem): MarkupElement {
  const attributes = place === undefined ? {} : placeAttributes(place, text);
  return group({ ...attributes, class: isHere === true ? 'here' : undefined }, [mark]);
}

function hereLast(one: ChartItem, other: ChartItem): number {
  return Number(one.isHere === true) - Number(other.isHere === true);
}

function pressureText({ space }: ChartSubject, { pressure }: ChartPlane): string {
  const { low, high, input } = space.pressure;
  return low === high ? input.text : `${input.text}, drawn for ${showQuantity(pressure, 'pressure')}`;
}
