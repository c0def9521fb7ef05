/** What a history says in a few sentences, for hovers, lenses, drawings and reports. */
import { formatNumber, showEstimate, showQuantity } from '../../quantity/format-quantity.ts';
import { quantityInfo } from '../../quantity/quantities.ts';
import { CONFIDENCE, FURTHEST_YEARS } from './drift-forecast.ts';
import type { History } from './history.ts';
import type { ProposedCheck } from './proposed-check.ts';
import type { ReadingError } from './reading-error.ts';

/** Each without its stop. */
export function historySentences(history: History): readonly string[] {
  return [driftSentence(history), toleranceSentence(history), checkSentence(history)].filter(
    (sentence) => sentence !== undefined,
  );
}

/** `0.50 ± 0.31 %RH in a year`, or undefined where no drift can be fitted. */
export function driftWords({ quantity, drift }: History): string | undefined {
  if (!drift.ok) return undefined;
  const { difference } = quantityInfo(quantity);
  const { perYear, perYearUncertainty } = drift.value;
  return `${showEstimate(perYear, perYearUncertainty, difference)} in a year`;
}

function driftSentence(history: History): string {
  const { drift } = history;
  if (!drift.ok) return `No drift is known: ${drift.problem}`;
  const doubt = drift.value.isSignificant ? '' : ', which may as well be none';
  return `The drift is ${driftWords(history)}${doubt}`;
}

function toleranceSentence({ reached, tolerance }: History): string | undefined {
  if (reached === undefined || tolerance === undefined) return undefined;
  const permitted = showQuantity(tolerance.value.value, tolerance.value.dimension);
  const { expected } = reached;
  const when = expected === undefined ? `is not reached within ${FURTHEST_YEARS} years` : `is reached on ${expected}`;
  return `The tolerance of ${permitted} ${when}, ${confidenceWords(reached)}`;
}

/** `with a confidence of 95 % between 2027-03-01 and 2031-05-12` */
export function confidenceWords({ soonest, latest }: NonNullable<History['reached']>): string {
  const confidence = `with a confidence of ${showQuantity(CONFIDENCE, 'percentage')}`;
  if (soonest === undefined) return `${confidence} not within ${FURTHEST_YEARS} years`;
  return latest === undefined
    ? `${confidence} not before ${soonest}`
    : `${confidence} between ${soonest} and ${latest}`;
}

function checkSentence({ proposed }: History): string {
  if (!proposed.ok) return `No check is proposed: ${proposed.problem}`;
  return `The next check is proposed ${proposedWords(proposed.value)}`;
}

/** `for 2027-01-14 by the variables-data method` */
export function proposedWords({ date, isAtOnce, method }: ProposedCheck): string {
  return `${isAtOnce ? 'at once' : `for ${date}`} by the ${method} method`;
}

/** `En -0.55` */
export function enWords(enNumber: number): string {
  return `En ${formatNumber(enNumber, 2)}`;
}

/** `2026-09-02 as found` */
export function readingWords({ reading: { date, state } }: ReadingError): string {
  return state === undefined ? date : `${date} ${state === 'as-found' ? 'as found' : 'as left'}`;
}
