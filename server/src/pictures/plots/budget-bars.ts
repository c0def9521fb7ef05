/** An uncertainty budget as bars, the largest contribution first, and what it leaves of the tolerance. */
import type { MarkupElement } from '../../base/markup.ts';
import { wrapped } from '../../base/words.ts';
import type { Budget, BudgetContribution } from '../../evaluate/budget/budget.ts';
import { improvementWords } from '../../evaluate/budget/words.ts';
import { showCorner } from '../../evaluate/facts/fact.ts';
import type { Dimension } from '../../quantity/dimension.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { quantityInfo } from '../../quantity/quantities.ts';
import { seriesClass } from '../picture-style.ts';
import { drawing, group, label, line, rectangle } from '../svg.ts';
import { drawToleranceGauge, GAUGE_HEIGHT } from './budget-gauge.ts';

const WIDTH = 760;
const TOP = 46;
const ROW = 21;
/** px from the left: where titles end, where bars are, where numbers end. */
const TITLES_END = 318;
const BARS = { from: 328, to: 520 };
const NUMBERS = { standard: 628, result: 740 };
const LINE = 17;
const CHARACTERS = 112;

export function budgetBars(budget: Budget): MarkupElement {
  const { quantity, at, contributions, standardUncertainty } = budget;
  const { title, difference } = quantityInfo(quantity);
  const heading = `Uncertainty of the ${title} at ${showCorner(at)}`;
  const bottom = TOP + contributions.length * ROW;
  const gaugeTop = bottom + ROW + 26;
  const words = wrapped(improvementWords(budget) ?? '', CHARACTERS);
  const wordsTop = gaugeTop + GAUGE_HEIGHT;
  return drawing({
    width: WIDTH,
    height: wordsTop + words.length * LINE,
    title: heading,
    description: contributions.map(contributionWords).join('; '),
    content: [
      label([24, 16], heading, { class: 'title' }),
      ...columnHeads(),
      ...contributions.map((each, row) => contributionRow(each, difference, TOP + row * ROW)),
      line([24, bottom - 10], [NUMBERS.result, bottom - 10], { class: 'grid' }),
      label([TITLES_END, bottom + 8], 'combined', { class: 'title end' }),
      label([NUMBERS.result, bottom + 8], showQuantity(standardUncertainty, difference), { class: 'title end' }),
      ...drawToleranceGauge(budget, [24, gaugeTop], WIDTH - 48),
      ...words.map((text, row) => label([24, wordsTop + row * LINE], text)),
    ],
  });
}

function columnHeads(): readonly MarkupElement[] {
  return [
    label([BARS.from, TOP - 11], 'share of the variance', { class: 'quiet' }),
    label([NUMBERS.standard, TOP - 11], 'u', { class: 'quiet end' }),
    label([NUMBERS.result, TOP - 11], 'u in the result', { class: 'quiet end' }),
  ];
}

function contributionRow(contribution: BudgetContribution, difference: Dimension, y: number): MarkupElement {
  const { title, standardUncertainty, dimension, resultUncertainty, share } = contribution;
  const end = BARS.from + share * (BARS.to - BARS.from);
  return group({ class: 'contribution', 'data-kind': contribution.kind }, [
    label([TITLES_END, y + 4], title, { class: 'end' }),
    rectangle([BARS.from, y - 7], [end, y + 7], { class: `bar ${seriesClass(0)}` }),
    label([end + 6, y + 4], showQuantity(share, 'percentage')),
    label([NUMBERS.standard, y + 4], showQuantity(standardUncertainty, dimension), { class: 'end' }),
    label([NUMBERS.result, y + 4], showQuantity(resultUncertainty, difference), { class: 'end' }),
  ]);
}

function contributionWords({ title, share }: BudgetContribution): string {
  return `${title} ${showQuantity(share, 'percentage')}`;
}
