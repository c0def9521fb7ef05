/** One uncertainty budget as a small Markdown table: for hovers and reports. */
import type { Budget } from '../../evaluate/budget/budget.ts';
import { budgetSentences } from '../../evaluate/budget/words.ts';
import { showCorner } from '../../evaluate/facts/fact.ts';
import { formatNumber, showQuantity } from '../../quantity/format-quantity.ts';
import { quantityInfo } from '../../quantity/quantities.ts';
import { escapeMarkdown, sectionsTogether } from './markdown.ts';

export function budgetTable(budget: Budget): string {
  const { quantity, at, contributions, standardUncertainty, expandedUncertainty, coverageFactor } = budget;
  const { title, difference } = quantityInfo(quantity);
  const show = (value: number): string => showQuantity(value, difference);
  const rows = [
    `| contribution | u | in the ${title} | share |`,
    '| --- | ---: | ---: | ---: |',
    ...contributions.map((part) =>
      row(
        escapeMarkdown(part.title),
        showQuantity(part.standardUncertainty, part.dimension),
        show(part.resultUncertainty),
        showQuantity(part.share, 'percentage'),
      ),
    ),
    row('**combined**', '', `**${show(standardUncertainty)}**`, ''),
    row(`**expanded, k = ${formatNumber(coverageFactor, 2)}**`, '', `**${show(expandedUncertainty)}**`, ''),
  ];
  const heading = `**Uncertainty of the ${title}** at ${escapeMarkdown(showCorner(at))}`;
  const lines = budgetSentences(budget).map((line) => `- ${escapeMarkdown(line)}`);
  return sectionsTogether([heading, rows.join('\n'), lines.join('\n')]);
}

function row(...cells: readonly string[]): string {
  return `| ${cells.join(' | ')} |`;
}
