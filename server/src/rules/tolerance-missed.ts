import { ERROR_KINDS } from '../evaluate/air-temperature/error-models.ts';
import { costLimit, fixedTemperatureLimit } from '../evaluate/air-temperature/limits.ts';
import { toleranceLimit } from '../evaluate/budget/limits.ts';
import { expandedUncertainty, improvedUncertainty } from '../evaluate/budget/uncertainty-facts.ts';
import type { SourceKind } from '../evaluate/budget/uncertainty-source.ts';
import { showFact } from '../evaluate/facts/fact.ts';
import { broken, type Limit } from '../evaluate/facts/limit.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { ResolvedPoint } from '../evaluate/resolved/resolved-point.ts';
import { formatNumber, showQuantity } from '../quantity/format-quantity.ts';
import { type QuantityName, quantityInfo } from '../quantity/quantities.ts';
import type { FindingDraft, Rule } from './rule.ts';
import { improvementSentence, type JudgedReport, judgedReports, largestContribution } from './support/budget-views.ts';
import { worstPhase } from './support/related.ts';
import { atCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'tolerance-missed',
  group: 'Uncertainty and checks',
  severity: 'warning',
  title: 'The expanded uncertainty of a report is larger than its tolerance.',
  why: 'A reading within the tolerance then does not show that the air is. Neither can a check show that the point is right.',
  mend: 'Lessen the largest contribution, or ask for no more than can be measured.',
  leavesAlone:
    'Budgets of which one error of the air temperature is more than half, while another rule speaks of that error: stem conduction, warmth of the head, spacing, lag, and a fixed air temperature.',
  sources: ['JCGM 100:2008', 'ILAC-G8:09/2019, guard band of the expanded uncertainty'],
  facts: [expandedUncertainty, improvedUncertainty],
  fixes: [],
  check: { point: (view) => judgedReports(view).flatMap((judged) => missed(view, judged)) },
};

function missed(view: PointEvaluation, judged: JudgedReport): readonly FindingDraft[] {
  const { quantity, tolerance, expanded, improved, budget } = judged;
  if (broken(toleranceLimit(quantity), view) === undefined || isSpokenOfElsewhere(view, judged)) return [];
  const { title } = quantityInfo(quantity);
  const permitted = showQuantity(tolerance.value.value, tolerance.value.dimension);
  const coverage = formatNumber(budget.coverageFactor, 1);
  return [
    {
      message: () =>
        `The ${title} is uncertain by ${showFact(expanded)} (k = ${coverage})${atCorner(expanded)}, more than its tolerance of ${permitted}.${improvementSentence(judged)}`,
      origin: tolerance.origin,
      facts: [expanded, improved],
      related: () => [...worstPhase(view.space, expanded), ...largestContribution(judged)],
    },
  ];
}

/** Errors of the air temperature that have rules of their own, each with the limit that its rule asks. */
const OTHER_RULES: Readonly<Partial<Record<SourceKind, (quantity: QuantityName) => Limit<ResolvedPoint>>>> = {
  'fixed-temperature': fixedTemperatureLimit,
  ...Object.fromEntries(ERROR_KINDS.map((kind) => [kind, costLimit(kind)])),
};
const MOST_OF_VARIANCE = 0.5;

function isSpokenOfElsewhere(view: PointEvaluation, { quantity, budget }: JudgedReport): boolean {
  const [largest] = budget.contributions;
  const other = largest === undefined ? undefined : OTHER_RULES[largest.kind];
  if (largest === undefined || other === undefined || largest.share <= MOST_OF_VARIANCE) return false;
  return broken(other(quantity), view) !== undefined;
}
