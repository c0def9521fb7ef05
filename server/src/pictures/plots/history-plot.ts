/**
 * How a point has held against its references: the errors of the visits with the uncertainty of each reference, the
 * tolerance, the drift with its band, the day on which it is predicted to reach the tolerance, and the next check.
 */
import type { MarkupElement } from '../../base/markup.ts';
import type { Drift } from '../../evaluate/history/drift-forecast.ts';
import type { History } from '../../evaluate/history/history.ts';
import type { ReadingError } from '../../evaluate/history/reading-error.ts';
import { historySentences, readingWords } from '../../evaluate/history/words.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { quantityInfo } from '../../quantity/quantities.ts';
import { seriesClass } from '../picture-style.ts';
import { circle, drawing, group, label, line, polygon, polyline, rectangle } from '../svg.ts';
import { bandOn, daysAcross, frameOf, type HistoryPlane, PLANE, placeIn, planeOf, SIZE } from './history-plane.ts';

const [DRIFT, REACHED, NEXT] = [seriesClass(0), seriesClass(1), seriesClass(2)];

/** Half a mark of a reading. Pixels. */
const MARK = 3.5;

/** @param planned the day of the next check by the plan of the point, where there is one */
export function historyPlot(history: History, planned: string | undefined): MarkupElement {
  const { quantity, errors, drift, reached, proposed } = history;
  const next = proposed.ok ? proposed.value.date : planned;
  const ahead = [next, reached?.expected].filter((date) => date !== undefined);
  const plane = planeOf(history, ahead);
  return drawing({
    ...SIZE,
    title: `Errors of the ${quantityInfo(quantity).title} over the years`,
    description: [...errors.map(wordsOfReading), ...historySentences(history)].join('. '),
    content: [
      ...frameOf(plane),
      ...toleranceLines(plane, history),
      ...(drift.ok ? driftLines(plane, drift.value) : []),
      ...errors.map((each) => readingMark(plane, each)),
      ...dayMark(plane, reached?.expected, 'tolerance', REACHED, 'top'),
      ...dayMark(plane, next, 'next check', NEXT, 'bottom'),
    ],
  });
}

function wordsOfReading(of: ReadingError): string {
  return `${readingWords(of)} ${showQuantity(of.error, quantityInfo(of.reading.quantity).difference)}`;
}

function toleranceLines(plane: HistoryPlane, { tolerance }: History): readonly MarkupElement[] {
  if (tolerance === undefined) return [];
  const { value } = tolerance.value;
  return [value, -value].map((error) => {
    const [, y] = placeIn(plane, plane.first, error);
    return line([PLANE.left, y], [PLANE.right, y], { class: 'limit' });
  });
}

/** Broken at every adjustment, and drawn on to the end of the plane. */
function driftLines(plane: HistoryPlane, drift: Drift): readonly MarkupElement[] {
  const { stretches } = drift.segment;
  return stretches.flatMap(({ from, adjustedSince }, index) => {
    const bands = daysAcross(from, stretches[index + 1]?.from ?? plane.last).map((date) => ({
      date,
      ...bandOn(drift, date, adjustedSince),
    }));
    const edge = (end: 'low' | 'high') => bands.map((band) => placeIn(plane, band.date, band[end]));
    return [
      polygon([...edge('high'), ...edge('low').toReversed()], { class: `area ${DRIFT}` }),
      polyline(
        bands.map(({ date, middle }) => placeIn(plane, date, middle)),
        { class: `curve ${DRIFT}` },
      ),
    ];
  });
}

/** A round mark as found, a square one as left; the bar is the uncertainty of the reference. */
function readingMark(plane: HistoryPlane, { reading, error }: ReadingError): MarkupElement {
  const [x, y] = placeIn(plane, reading.date, error);
  const reach = reading.referenceUncertainty ?? 0;
  const [top, bottom] = [placeIn(plane, reading.date, error + reach), placeIn(plane, reading.date, error - reach)];
  const mark =
    reading.state === 'as-left'
      ? rectangle([x - MARK, y - MARK], [x + MARK, y + MARK], { class: 'dot' })
      : circle([x, y], MARK, { class: 'dot' });
  return group({}, [line(top, bottom, { class: 'axis' }), mark]);
}

type Side = 'top' | 'bottom';

/** A day with its words at one end of its line; nothing where it lies beyond the plane. */
function dayMark(
  plane: HistoryPlane,
  date: string | undefined,
  words: string,
  look: string,
  side: Side,
): readonly MarkupElement[] {
  if (date === undefined || date > plane.last) return [];
  const [x] = placeIn(plane, date, 0);
  const y = side === 'top' ? PLANE.top + 11 : PLANE.bottom - 4;
  const isRight = x > (PLANE.left + PLANE.right) / 2;
  return [
    line([x, PLANE.top], [x, PLANE.bottom], { class: `curve ${look}` }),
    label([isRight ? x - 4 : x + 4, y], words, { class: isRight ? 'end' : undefined }),
  ];
}
