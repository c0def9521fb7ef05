/** The expanded uncertainty of a report against its tolerance, with the guard band between them (ILAC-G8, w = U). */
import type { MarkupElement } from '../../base/markup.ts';
import type { Budget } from '../../evaluate/budget/budget.ts';
import { formatNumber, showQuantity } from '../../quantity/format-quantity.ts';
import { quantityInfo } from '../../quantity/quantities.ts';
import { seriesClass } from '../picture-style.ts';
import { group, label, line, rectangle, type XY } from '../svg.ts';

export const GAUGE_HEIGHT = 142;
const BAR = 16;
/** px below the top: the bar of the uncertainty, the strip of the tolerance. */
const UNCERTAINTY_AT = 18;
const STRIP_AT = 62;
/** How far beyond the larger of the two the axis reaches. */
const ROOM = 1.06;

/** @param at its left upper corner */
export function drawToleranceGauge(budget: Budget, [left, top]: XY, width: number): readonly MarkupElement[] {
  const { quantity, expandedUncertainty, coverageFactor, tolerance, improvement } = budget;
  const show = (value: number): string => showQuantity(value, quantityInfo(quantity).difference);
  const most = ROOM * Math.max(expandedUncertainty, tolerance ?? 0);
  const xOf = (value: number): number => left + (most > 0 ? value / most : 0) * width;
  const uncertaintyTop = top + UNCERTAINTY_AT;
  const words = `expanded uncertainty ${show(expandedUncertainty)}, k = ${formatNumber(coverageFactor, 2)}`;
  return [
    label([left, uncertaintyTop - 5], words, { class: 'title' }),
    stretch([left, xOf(expandedUncertainty)], uncertaintyTop, `bar ${seriesClass(0)} expanded-uncertainty`),
    ...(improvement === undefined
      ? []
      : [
          line(
            [xOf(improvement.expandedUncertainty), uncertaintyTop - 2],
            [xOf(improvement.expandedUncertainty), uncertaintyTop + BAR + 2],
            { class: 'improved' },
          ),
          label(
            [xOf(improvement.expandedUncertainty) + 5, uncertaintyTop + BAR + 13],
            `${show(improvement.expandedUncertainty)} with the best change`,
          ),
        ]),
    ...(tolerance === undefined
      ? [label([left, top + STRIP_AT + 10], 'no tolerance is given', { class: 'quiet' })]
      : drawStrip(tolerance, expandedUncertainty, xOf, top, show)),
  ];
}

/** What of the tolerance is left to a reading's error once the guard band is taken off. */
function drawStrip(
  tolerance: number,
  expandedUncertainty: number,
  xOf: (value: number) => number,
  top: number,
  show: (value: number) => string,
): readonly MarkupElement[] {
  const accepted = Math.max(0, tolerance - expandedUncertainty);
  const stripTop = top + STRIP_AT;
  const [from, guard, to] = [xOf(0), xOf(accepted), xOf(tolerance)];
  const strokes = Array.from({ length: Math.max(0, Math.floor((to - guard) / 8)) }, (_, index) =>
    line([guard + index * 8, stripTop + BAR], [guard + index * 8 + 8, stripTop], { class: 'guard' }),
  );
  const left =
    accepted > 0
      ? `Errors up to ${show(accepted)} are shown to be within; the guard band of ${show(expandedUncertainty)} follows.`
      : 'The guard band takes all of the tolerance: no reading is shown to be within.';
  return [
    stretch([from, guard], stripTop, `area ${seriesClass(2)} accepted`),
    group({ class: 'guard-band' }, [stretch([guard, to], stripTop, 'guard-box'), ...strokes]),
    line([to, top + UNCERTAINTY_AT - 6], [to, stripTop + BAR + 6], { class: 'limit' }),
    label([to, stripTop + BAR + 18], `tolerance ${show(tolerance)}`, { class: to > from + 120 ? 'end' : '' }),
    label([from, stripTop + BAR + 36], left),
  ];
}

function stretch([from, to]: readonly [number, number], top: number, name: string): MarkupElement {
  return rectangle([from, top], [to, top + BAR], { class: name });
}
