/** What an uncertainty budget comes to, in sentences: what helps most, and what it means for the tolerance. */
import { upperFirst } from '../base/words.ts';
import { formatNumber, showQuantity } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantity-names.ts';
import type { Budget } from './budget.ts';
import { budgetNotes } from './uncertainty-facts.ts';

export function budgetSentences(budget: Budget): readonly string[] {
  const improvement = improvementWords(budget);
  return [...(improvement === undefined ? [] : [improvement]), ...furtherSentences(budget)];
}

/** Beside what helps most, which the bars of a budget say too. */
export function furtherSentences(budget: Budget): readonly string[] {
  const sentences = [toleranceWords(budget), freedomWords(budget), ...budgetNotes(budget)];
  return sentences.filter((sentence) => sentence !== undefined);
}

export function improvementWords({ contributions, improvement, quantity }: Budget): string | undefined {
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

function toleranceWords({ tolerance, verdict, conformance, quantity }: Budget): string | undefined {
  if (tolerance === undefined || verdict === undefined || conformance === undefined) return undefined;
  const permitted = showQuantity(tolerance, quantityInfo(quantity).difference);
  const within = conformance > 0.999 ? 'over 99.9 %' : showQuantity(conformance, 'percentage');
  return `The tolerance of ${permitted} is ${VERDICT_WORDS[verdict]}; ${within} of readings lie within it.`;
}

function freedomWords({ effectiveDegreesOfFreedom: freedom }: Budget): string | undefined {
  return freedom === undefined ? undefined : `Effective degrees of freedom: ${formatNumber(Math.floor(freedom), 0)}.`;
}
