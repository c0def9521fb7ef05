import { comfortableTolerance, toleranceLimit } from '../evaluate/budget/limits.ts';
import { expandedUncertainty, improvedUncertainty } from '../evaluate/budget/uncertainty-facts.ts';
import { showFact } from '../evaluate/facts/fact.ts';
import { broken } from '../evaluate/facts/limit.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { formatNumber, showQuantity } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import type { FindingDraft, Rule } from './rule.ts';
import { improvementSentence, type JudgedReport, judgedReports, largestContribution } from './support/budget-views.ts';
import { worstPhase } from './support/related.ts';
import { atCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'tolerance-marginal',
  group: 'Uncertainty and checks',
  severity: 'information',
  title: 'The expanded uncertainty of a report takes up more than four fifths of its tolerance.',
  why: 'It suffices today. A longer interval, a dirtier filter or a second look at the data sheet may be enough to miss the tolerance.',
  mend: 'Nothing has to be mended. Know which contribution weighs most before something is changed.',
  leavesAlone: 'Uncertainties over the tolerance: tolerance-missed speaks of those.',
  sources: ['JCGM 100:2008', 'four fifths: common practice, no source'],
  facts: [expandedUncertainty, improvedUncertainty],
  fixes: [],
  check: { point: (view) => judgedReports(view).flatMap((judged) => marginal(view, judged)) },
};

function marginal(view: PointEvaluation, judged: JudgedReport): readonly FindingDraft[] {
  const { quantity, tolerance, expanded, improved, budget } = judged;
  const isTight = broken(comfortableTolerance(quantity), view) !== undefined;
  if (broken(toleranceLimit(quantity), view) !== undefined || !isTight) return [];
  const { title } = quantityInfo(quantity);
  const coverage = formatNumber(budget.coverageFactor, 1);
  return [
    {
      message: () =>
        `The ${title} is uncertain by ${showFact(expanded)} (k = ${coverage})${atCorner(expanded)}, over four fifths of its tolerance of ${showQuantity(tolerance.value.value, tolerance.value.dimension)}.${improvementSentence(judged)}`,
      origin: tolerance.origin,
      facts: [expanded, improved],
      related: () => [...worstPhase(view.space, expanded), ...largestContribution(judged)],
    },
  ];
}
