/** The facts of one pair of readings: the error, how uncertain both sides are, and what that allows. */

import type { Computed, FactKey } from '../evaluate/facts/declared-fact.ts';
import { type FactInput, isKnown, type KnownFact, showFact } from '../evaluate/facts/fact.ts';
import { factOf } from '../evaluate/facts/remembered-facts.ts';
import type { ReadingError } from '../evaluate/history/reading-error.ts';
import { COMBINED_UNCERTAINTY } from '../physics/metrology/budget.ts';
import { EN_COVERAGE, EN_NUMBER } from '../physics/metrology/decision.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantities.ts';

/** A pair of which both uncertainties are known. */
interface JudgedReading extends ReadingError {
  readonly pointUncertainty: number;
  readonly referenceUncertainty: number;
  /** Factor k of the site. */
  readonly coverage: number;
}

export const readingErrorFact = readingFact('error', {
  title: (title) => `error of the ${title}`,
  compute: (judged) => ({
    value: judged.error,
    derivation: () => ({ inputs: pairInputs(judged), relation: 'shown − reference', formulas: [] }),
  }),
});

export const uncertaintyOfPoint = readingFact('point-uncertainty', {
  title: (title) => `expanded uncertainty of the ${title} that the point showed`,
  compute: (judged) => ({
    value: judged.pointUncertainty,
    derivation: () => {
      const { using } = judged.reading;
      const note =
        using === undefined || using === 'reference-instrument'
          ? 'That of the report at its worst corner: the state of the air at the reading is not written down in full.'
          : 'Out of the process: without what wall, warmth of the head, gradient, lag and pressure add there.';
      return { inputs: pairInputs(judged).slice(0, 1), formulas: [COMBINED_UNCERTAINTY], notes: [note] };
    },
  }),
});

export const uncertaintyOfReference = readingFact('reference-uncertainty', {
  title: () => 'expanded uncertainty of the reference',
  compute: (judged) => ({
    value: judged.referenceUncertainty,
    derivation: () => ({
      inputs: [inputOf(judged, 'using', judged.reading.using ?? 'reference'), ...pairInputs(judged).slice(1)],
      formulas: [],
    }),
  }),
});

/** The largest difference that agrees. */
export const allowedDifference = readingFact('allowed-difference', {
  title: () => 'largest difference that agrees',
  compute: (judged) => ({
    value: Math.hypot(judged.pointUncertainty, judged.referenceUncertainty) * (EN_COVERAGE / judged.coverage),
    derivation: () => {
      const sides = [factOf(uncertaintyOfPoint, judged), factOf(uncertaintyOfReference, judged)].filter(isKnown);
      const inputs = sides.map((side) => inputOf(judged, side.title, showFact(side)));
      return { inputs, formulas: [EN_NUMBER] };
    },
  }),
});

export interface ReadingFacts {
  readonly error: KnownFact;
  readonly ofPoint: KnownFact;
  readonly ofReference: KnownFact;
  readonly allowed: KnownFact;
}

/** Undefined where an uncertainty is not known, so that the pair tells nothing. @param coverage factor k of the site */
export function readingFacts(error: ReadingError, coverage: number): ReadingFacts | undefined {
  const { pointUncertainty, reading } = error;
  const { referenceUncertainty } = reading;
  if (pointUncertainty === undefined || referenceUncertainty === undefined) return undefined;
  const judged = { ...error, pointUncertainty, referenceUncertainty, coverage };
  const known = [readingErrorFact, uncertaintyOfPoint, uncertaintyOfReference, allowedDifference]
    .map((key) => factOf(key, judged))
    .filter(isKnown);
  const [found, ofPoint, ofReference, allowed] = known;
  if (found === undefined || ofPoint === undefined || ofReference === undefined || allowed === undefined)
    return undefined;
  return { error: found, ofPoint, ofReference, allowed };
}

interface ReadingDeclaration {
  /** @param title of the quantity */
  readonly title: (title: string) => string;
  readonly compute: (judged: JudgedReading) => Computed;
}

function readingFact(name: string, { title, compute }: ReadingDeclaration): FactKey<JudgedReading> {
  return {
    id: `reading/${name}`,
    pattern: `reading/${name}`,
    titleOf: ({ reading }) => title(quantityInfo(reading.quantity).title),
    dimensionOf: ({ reading }) => quantityInfo(reading.quantity).difference,
    compute,
  };
}

function pairInputs(judged: JudgedReading): readonly FactInput[] {
  const { quantity, shown, reference } = judged.reading;
  const { dimension } = quantityInfo(quantity);
  return [
    inputOf(judged, 'shown', showQuantity(shown, dimension)),
    inputOf(judged, 'reference', showQuantity(reference, dimension)),
  ];
}

function inputOf({ reading: { file, origin } }: JudgedReading, label: string, text: string): FactInput {
  return { label, text, file, origin };
}
