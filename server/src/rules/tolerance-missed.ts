import { exceeds } from '../base/rounding.ts';
import { airTemperatureCost } from '../evaluate/air-temperature/cost.ts';
import { SHARE_OF_TOLERANCE } from '../evaluate/air-temperature/cost-of-error.ts';
import { fixedTemperatureError } from '../evaluate/air-temperature/taken-temperature.ts';
import { expandedUncertainty, improvedUncertainty } from '../evaluate/budget/uncertainty-facts.ts';
import type { SourceKind } from '../evaluate/budget/uncertainty-source.ts';
import { isKnown, showFact } from '../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { ReportFact } from '../evaluate/resolved/point-fact.ts';
import { formatNumber, showQuantity } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantity-names.ts';
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
  facts: [expandedUncertainty, improvedUncertainty, fixedTemperatureError, ...Object.values(airTemperatureCost)],
  fixes: [],
  check: { point: (view) => judgedReports(view).flatMap((judged) => missed(view, judged)) },
};

function missed(view: PointEvaluation, judged: JudgedReport): readonly FindingDraft[] {
  const { quantity, tolerance, expanded, improved, budget } = judged;
  if (expanded.value <= tolerance.value.value || isSpokenOfElsewhere(view, judged)) return [];
  const { title } = quantityInfo(quantity);
  const permitted = showQuantity(tolerance.value.value, tolerance.value.dimension);
  const coverage = formatNumber(budget.coverageFactor, 1);
  return [
    {
      message: `The ${title} is uncertain by ${showFact(expanded)} (k = ${coverage})${atCorner(expanded)}, more than its tolerance of ${permitted}.${improvementSentence(judged)}`,
      origin: tolerance.origin,
      facts: [expanded, improved],
      related: [...worstPhase(view.space, expanded), ...largestContribution(judged)],
    },
  ];
}

interface OtherRule {
  /** The fact that it looks at. */
  readonly cost: ReportFact;
  /** Of the tolerance; it speaks where the cost is more. */
  readonly share: number;
}

/** Errors of the air temperature that have rules of their own. */
const OTHER_RULES: Readonly<Partial<Record<SourceKind, OtherRule>>> = {
  'fixed-temperature': { cost: fixedTemperatureError, share: 1 },
  'stem-conduction': { cost: airTemperatureCost['stem-conduction'], share: SHARE_OF_TOLERANCE },
  'head-warmth': { cost: airTemperatureCost['head-warming'], share: SHARE_OF_TOLERANCE },
  gradient: { cost: airTemperatureCost.gradient, share: SHARE_OF_TOLERANCE },
  lag: { cost: airTemperatureCost.lag, share: SHARE_OF_TOLERANCE },
};
const MOST_OF_VARIANCE = 0.5;

function isSpokenOfElsewhere({ facts }: PointEvaluation, { quantity, tolerance, budget }: JudgedReport): boolean {
  const [largest] = budget.contributions;
  const other = largest === undefined ? undefined : OTHER_RULES[largest.kind];
  if (largest === undefined || other === undefined || largest.share <= MOST_OF_VARIANCE) return false;
  const cost = facts.get(other.cost(quantity));
  return isKnown(cost) && exceeds(cost.value, tolerance.value.value * other.share);
}
