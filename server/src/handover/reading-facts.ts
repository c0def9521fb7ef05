/** The facts of one pair of readings: the error, how uncertain both sides are, and what that allows. */

import type { KnownFact } from '../evaluate/facts/fact.ts';
import type { ReadingError } from '../evaluate/history/reading-error.ts';
import { COMBINED_UNCERTAINTY } from '../physics/metrology/budget.ts';
import { EN_COVERAGE, EN_NUMBER } from '../physics/metrology/decision.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantity-names.ts';

export interface ReadingFacts {
  readonly error: KnownFact;
  readonly ofPoint: KnownFact;
  readonly ofReference: KnownFact;
  /** The largest difference that agrees. */
  readonly allowed: KnownFact;
}

/** Undefined where an uncertainty is not known, so that the pair tells nothing. @param coverage factor k of the site */
export function readingFacts(
  { reading, error, pointUncertainty }: ReadingError,
  coverage: number,
): ReadingFacts | undefined {
  const { quantity, shown, reference, referenceUncertainty, file, origin, using } = reading;
  if (pointUncertainty === undefined || referenceUncertainty === undefined) return undefined;
  const { title, dimension, difference } = quantityInfo(quantity);
  const input = (label: string, text: string) => ({ label, text, file, origin });
  const pair = [input('shown', showQuantity(shown, dimension)), input('reference', showQuantity(reference, dimension))];
  const base = { dimension: difference, notes: [] };
  const ofPoint: KnownFact = {
    ...base,
    id: 'reading/point-uncertainty',
    title: `expanded uncertainty of the ${title} that the point showed`,
    value: pointUncertainty,
    inputs: pair.slice(0, 1),
    formulas: [COMBINED_UNCERTAINTY],
    notes: [
      using === undefined || using === 'reference-instrument'
        ? 'That of the report at its worst corner: the state of the air at the reading is not written down in full.'
        : 'Out of the process: without what wall, warmth of the head, gradient, lag and pressure add there.',
    ],
  };
  const ofReference: KnownFact = {
    ...base,
    id: 'reading/reference-uncertainty',
    title: 'expanded uncertainty of the reference',
    value: referenceUncertainty,
    inputs: [input('using', using ?? 'reference'), ...pair.slice(1)],
    formulas: [],
  };
  const toEn = EN_COVERAGE / coverage;
  return {
    error: {
      ...base,
      id: 'reading/error',
      title: `error of the ${title}`,
      value: error,
      inputs: pair,
      relation: 'shown − reference',
      formulas: [],
    },
    ofPoint,
    ofReference,
    allowed: {
      ...base,
      id: 'reading/allowed-difference',
      title: 'largest difference that agrees',
      value: Math.hypot(pointUncertainty, referenceUncertainty) * toEn,
      inputs: [ofPoint, ofReference].map(({ title: label, value }) => input(label, showQuantity(value, difference))),
      formulas: [EN_NUMBER],
    },
  };
}
