/** One uncertainty budget as a small Markdown table: for hovers and reports. */
import type { Budget } from '../evaluate/budget.ts';
import { showCorner } from '../evaluate/fact.ts';
import { budgetNotes } from '../evaluate/uncertainty-facts.ts';
import { formatNumber, showQuantity } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantity-names.ts';
import { escapeMarkdown, upperFirst } from './markdown.ts';

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
  const notes = [improvementLine(budget), toleranceLine(budget), freedomLine(budget), ...budgetNotes(budget)];
  const lines = notes.filter((line) => line !== undefined).map((line) => `- ${escapeMarkdown(line)}`);
  return [heading, rows.join('\n'), lines.join('\n')].filter((section) => section !== '').join('\n\n');
}

function row(...cells: readonly string[]): string {
  return `| ${cells.join(' | ')} |`;
}

function improvementLine({ contributions, improvement, quantity }: Budget): string | undefined {
  const [largest] = contributions;
  if (largest === undefined || improvement === undefined) return undefined;
  const left = showQuantity(improvement.expandedUncertainty, quantityInfo(quantity).difference);
  return `The ${largest.title} weighs most. ${upperFirst(improvement.words)} helps most: it would leave ${left} at best.`;
}

const VERDICT_WORDS: Readonly<Record<NonNullable<Budget['verdict']>, string>> = {
  pass: 'met, the uncertainty allowed for',
  'conditional-pass': 'not shown to be met, since the uncertainty is larger',
  'conditional-fail': 'not shown to be missed',
  fail: 'missed',
};

function toleranceLine({ tolerance, verdict, conformance, quantity }: Budget): string | undefined {
  if (tolerance === undefined || verdict === undefined || conformance === undefined) return undefined;
  const permitted = showQuantity(tolerance, quantityInfo(quantity).difference);
  const within = conformance > 0.999 ? 'over 99.9 %' : showQuantity(conformance, 'percentage');
  return `The tolerance of ${permitted} is ${VERDICT_WORDS[verdict]}; ${within} of readings lie within it.`;
}

function freedomLine({ effectiveDegreesOfFreedom: freedom }: Budget): string | undefined {
  return freedom === undefined ? undefined : `Effective degrees of freedom: ${formatNumber(Math.floor(freedom), 0)}.`;
}
