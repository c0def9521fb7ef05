/** The plane of a history: days across, errors up, with its grid. */
import type { MarkupElement } from '../../base/markup.ts';
import { daysAfter, daysBetween } from '../../evaluate/facts/calendar.ts';
import { type Drift, driftOn } from '../../evaluate/history/drift-forecast.ts';
import type { History } from '../../evaluate/history/history.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { type QuantityName, quantityInfo } from '../../quantity/quantities.ts';
import { placeOn, type Scale, ticksBetween } from '../scale.ts';
import { group, label, line, rectangle, type XY } from '../svg.ts';

/** Small enough for a hover. */
export const SIZE = { width: 320, height: 140 } as const;

export const PLANE = { left: 50, right: 312, top: 8, bottom: 118 } as const;

export interface HistoryPlane {
  readonly quantity: QuantityName;
  readonly first: string;
  readonly last: string;
  readonly days: Scale;
  readonly errors: Scale;
}

/** How far beyond its readings a history is drawn at the most: in its own length, or where that is short in days. */
const LONGEST_AHEAD = { lengths: 1.5, days: 730 } as const;
/** Room above the largest error or tolerance, as a part of it. */
const HEADROOM = 0.25;
const CURVE_STEPS = 12;
/** Between two dates of the axis. Pixels. */
const DATE_ROOM = 42;

/** @param ahead days that are to be seen, as far as they are not too far off */
export function planeOf(history: History, ahead: readonly string[]): HistoryPlane {
  const dates = history.errors.map(({ reading }) => reading.date);
  const [first = '', lastRead = ''] = [dates[0], dates.at(-1)];
  const length = daysBetween(first, lastRead);
  const furthest = length + Math.max(LONGEST_AHEAD.lengths * length, LONGEST_AHEAD.days);
  const last =
    [...ahead.filter((date) => daysBetween(first, date) <= furthest), lastRead].toSorted().at(-1) ?? lastRead;
  const reach = Math.max(...history.errors.map(sizeOf), sizeOfTolerance(history)) * (1 + HEADROOM);
  const { left, right, top, bottom } = PLANE;
  return {
    quantity: history.quantity,
    first,
    last,
    days: { low: 0, high: Math.max(1, daysBetween(first, last)), from: left + 8, to: right - 8 },
    errors: { low: -reach, high: reach, from: bottom, to: top },
  };
}

function sizeOf({ error, reading }: History['errors'][number]): number {
  return Math.abs(error) + (reading.referenceUncertainty ?? 0);
}

/** Something to see where all errors are nothing and there is no tolerance. */
const LEAST_REACH = 1e-6;

function sizeOfTolerance({ tolerance }: History): number {
  return Math.max(LEAST_REACH, tolerance?.value.value ?? 0);
}

/** Nothing leaves the plane: what lies beyond is drawn at its edge. */
export function placeIn({ first, days, errors }: HistoryPlane, date: string, error: number): XY {
  const inside = Math.min(errors.high, Math.max(errors.low, error));
  return [placeOn(days, daysBetween(first, date)), placeOn(errors, inside)];
}

/** The error and its band on some days, with what was adjusted since taken back. */
export function bandOn(drift: Drift, date: string, adjustedSince: number) {
  const { error, reach } = driftOn(drift, date);
  const middle = error - adjustedSince;
  return { low: middle - reach, middle, high: middle + reach };
}

/** Days from one to another, close enough for a curve to look like one. */
export function daysAcross(from: string, to: string): readonly string[] {
  const span = daysBetween(from, to);
  return Array.from({ length: CURVE_STEPS + 1 }, (_, step) => daysAfter(from, (span * step) / CURVE_STEPS) ?? to);
}

export function frameOf(plane: HistoryPlane): readonly MarkupElement[] {
  const { left, right, top, bottom } = PLANE;
  const { difference } = quantityInfo(plane.quantity);
  const marks = ticksBetween(plane.errors.low, plane.errors.high, difference, 4);
  const years = newYears(plane);
  return [
    group({ class: 'grid' }, [
      ...marks.map((error) => line([left, placeOn(plane.errors, error)], [right, placeOn(plane.errors, error)])),
      ...years.map((date) => line([placeIn(plane, date, 0)[0], top], [placeIn(plane, date, 0)[0], bottom])),
    ]),
    rectangle([left, top], [right, bottom], { class: 'axis' }),
    group({ class: 'quiet end' }, [
      ...marks.map((error) => label([left - 4, placeOn(plane.errors, error) + 4], showQuantity(error, difference))),
    ]),
    group({ class: 'quiet middle' }, dateLabels(plane, years)),
  ];
}

/** The first day of every year in between. */
function newYears({ first, last }: HistoryPlane): readonly string[] {
  const [from, to] = [first, last].map((date) => Number(date.slice(0, 4)));
  return Array.from({ length: (to ?? 0) - (from ?? 0) }, (_, index) => `${(from ?? 0) + 1 + index}-01-01`);
}

/** As many years as there is room for, or within one year the two ends. */
function dateLabels(plane: HistoryPlane, years: readonly string[]): readonly MarkupElement[] {
  const y = PLANE.bottom + 15;
  if (years.length === 0) return [plane.first, plane.last].map((date) => label([placeIn(plane, date, 0)[0], y], date));
  const every = Math.ceil((years.length * DATE_ROOM) / (PLANE.right - PLANE.left));
  return years
    .filter((_, index) => index % every === 0)
    .map((date) => label([placeIn(plane, date, 0)[0], y], date.slice(0, 4)));
}
