/** What the rules of uncertainty look at and how they speak of it. */

import type { Budget } from '../../evaluate/budget/budget.ts';
import { expandedUncertainty, improvedUncertainty } from '../../evaluate/budget/uncertainty-facts.ts';
import { improvementWords } from '../../evaluate/budget/words.ts';
import { isKnown, type KnownFact } from '../../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import type { Located } from '../../model/located.ts';
import type { QuantityName } from '../../quantity/quantities.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import type { Related } from '../rule.ts';

/** A report with a tolerance and an uncertainty to hold against it. */
export interface JudgedReport {
  readonly quantity: QuantityName;
  readonly tolerance: Located<Quantity>;
  readonly budget: Budget;
  readonly expanded: KnownFact;
  /** What the best change would leave. */
  readonly improved: KnownFact;
}

export function judgedReports({ reports, budgets, facts }: PointEvaluation): readonly JudgedReport[] {
  return reports.flatMap(({ quantity, report }): JudgedReport[] => {
    const { tolerance } = report.value;
    const budget = budgets.get(quantity)?.worst;
    const expanded = facts.get(expandedUncertainty(quantity));
    const improved = facts.get(improvedUncertainty(quantity));
    if (tolerance === undefined || !(tolerance.value.value > 0) || budget === undefined) return [];
    return isKnown(expanded) && isKnown(improved) ? [{ quantity, tolerance, budget, expanded, improved }] : [];
  });
}

/** Behind another sentence; nothing where no change would help. */
export function improvementSentence({ budget }: JudgedReport): string {
  const words = improvementWords(budget);
  return words === undefined ? '' : ` ${words}`;
}

/** Where the largest contribution is written. */
export function largestContribution({ budget }: JudgedReport): readonly Related[] {
  const [largest] = budget.contributions;
  return (largest?.inputs() ?? []).flatMap(({ label, text, origin, file }) =>
    origin === undefined
      ? []
      : [{ message: `The largest contribution: ${label}, ${text}.`, origin, ...(file === undefined ? {} : { file }) }],
  );
}
