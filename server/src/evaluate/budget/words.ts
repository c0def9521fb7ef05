/** What an uncertainty budget comes to, in sentences: what helps most, and what it means for the tolerance. */
import { conformanceProbability } from '../../physics/metrology/decision.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { quantityInfo } from '../../quantity/quantities.ts';
import type { Budget } from './budget.ts';
import { budgetNotes } from './uncertainty-facts.ts';

export function budgetSentences(budget: Budget): readonly string[] {
  const improvement = improvementWords(budget);
  return [...(improvement === undefined ? [] : [improvement]), ...furtherSentences(budget)];
}

/** Beside what weighs and helps most, which the bars of a budget say too. */
export function furtherSentences(budget: Budget): readonly string[] {
  const sentences = [toleranceWords(budget), ...budgetNotes(budget)];
  return sentences.filter((sentence) => sentence !== undefined);
}

/** `The accuracy of the humidity sensor weighs most; a more accurate humidity probe would leave 1.3 %RH at best.` */
export function improvementWords({ contributions, improvement, quantity }: Budget): string | undefined {
  const [largest] = contributions;
  if (largest === undefined || improvement === undefined) return undefined;
  const left = showQuantity(improvement.expandedUncertainty, quantityInfo(quantity).difference);
  return `The ${largest.title} weighs most; ${improvement.words} would leave ${left} at best.`;
}

/** Met where a guard band of the expanded uncertainty is kept (ILAC-G8:09/2019, w = U), for a reading without a known error. */
function toleranceWords(budget: Budget): string | undefined {
  const { tolerance, expandedUncertainty, standardUncertainty, quantity } = budget;
  if (tolerance === undefined) return undefined;
  const permitted = showQuantity(tolerance, quantityInfo(quantity).difference);
  const state =
    expandedUncertainty <= tolerance
      ? 'met, the uncertainty allowed for'
      : 'not shown to be met, since the uncertainty is larger';
  const conformance = conformanceProbability(0, standardUncertainty, { low: -tolerance, high: tolerance });
  const within = conformance > 0.999 ? 'over 99.9 %' : showQuantity(conformance, 'percentage');
  return `The tolerance of ${permitted} is ${state}; ${within} of readings lie within it.`;
}
