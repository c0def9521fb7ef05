/** The facts of the histories: the last error, the drift, when it reaches the tolerance, and the check proposed for it. */
import { EN_NUMBER } from '../../physics/metrology/decision.ts';
import { WEIGHTED_LEAST_SQUARES } from '../../physics/metrology/drift-fit.ts';
import { formatNumber, showEstimate, showQuantity } from '../../quantity/format-quantity.ts';
import { type QuantityName, quantityInfo } from '../../quantity/quantities.ts';
import { checkDue, lastCheckInput } from '../checks/due.ts';
import { MONTH_SECONDS, secondsBetween } from '../facts/calendar.ts';
import type { Derivation } from '../facts/declared-fact.ts';
import type { FactInput } from '../facts/fact.ts';
import { quantityInput } from '../facts/inputs.ts';
import { boundIf, figureBound, type Limit, limit, writtenBound } from '../facts/limit.ts';
import { pointFact, reportFact } from '../resolved/point-fact.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { CONFIDENCE, type Drift, FURTHEST_YEARS } from './drift-forecast.ts';
import { firstProposed, type History, historiesOf } from './history.ts';
import type { ReadingError } from './reading-error.ts';
import { confidenceWords, enWords, proposedWords, readingWords } from './words.ts';

export const lastError = reportFact('last-error', {
  title: (quantity, point) => {
    const last = historyOf(point, quantity)?.errors.at(-1);
    return `error of the ${quantityInfo(quantity).title} on ${last === undefined ? '' : readingWords(last)}`;
  },
  dimension: (quantity) => quantityInfo(quantity).difference,
  compute: (point, quantity) => {
    const last = historyOf(point, quantity)?.errors.at(-1);
    return last === undefined ? undefined : { value: last.error, derivation: () => explainedError(last) };
  },
});

function explainedError({ reading, enNumber, pointUncertainty }: ReadingError): Derivation {
  const { quantity, shown, reference, referenceUncertainty, file, origin } = reading;
  const { dimension, difference } = quantityInfo(quantity);
  const written = { file, origin };
  const uncertainty = (of: string, value: number | undefined): readonly FactInput[] =>
    value === undefined ? [] : [{ label: `uncertainty of the ${of}`, text: showQuantity(value, difference) }];
  return {
    inputs: [
      { label: 'shown', text: showQuantity(shown, dimension), ...written },
      { label: 'reference', text: showQuantity(reference, dimension), ...written },
      ...uncertainty('reference', referenceUncertainty).map(({ label, text }) => ({ label, text, ...written })),
      ...uncertainty('point', pointUncertainty),
    ],
    relation: 'error = shown − reference',
    formulas: enNumber === undefined ? [] : [EN_NUMBER],
    notes: [
      enNumber === undefined
        ? 'Without the uncertainties of the point and of the reference there is no En number.'
        : `The En number is ${formatNumber(enNumber, 2)}; beyond 1, either side, the two disagree.`,
    ],
  };
}

export const driftInAYear = reportFact('drift', {
  title: (quantity) => `drift of the ${quantityInfo(quantity).title} in a year`,
  dimension: (quantity) => quantityInfo(quantity).difference,
  compute: (point, quantity) => {
    const history = historyOf(point, quantity);
    if (history === undefined) return undefined;
    const { drift, errors } = history;
    const derivation = (): Derivation => ({
      inputs: errors.map(readingInput),
      formulas: [WEIGHTED_LEAST_SQUARES],
      notes: drift.ok ? driftNotes(quantity, drift.value) : [],
    });
    if (!drift.ok) return { value: undefined, missing: drift.problem, derivation };
    return { value: drift.value.perYear, derivation };
  },
});

function driftNotes(
  quantity: QuantityName,
  { segment, perYear, perYearUncertainty, isSignificant, fit }: Drift,
): readonly string[] {
  const { difference } = quantityInfo(quantity);
  const confidence = showQuantity(CONFIDENCE, 'percentage');
  const adjusted = segment.stretches.some(({ adjustedSince }) => adjustedSince !== 0);
  const notes = [
    `${showEstimate(perYear, perYearUncertainty, difference)} with a confidence of ${confidence}${isSignificant ? '' : ', so it may as well be none'}; from ${segment.errors.length} readings on ${segment.visits} visits up to ${segment.last}.`,
    adjusted
      ? 'Errors as found are moved by the adjustments made since, as far as as-left readings tell them.'
      : undefined,
    fit.isWeighted
      ? undefined
      : 'Not every reference states its uncertainty: the scatter of the readings stands for it.',
  ];
  return notes.filter((note) => note !== undefined);
}

/** From today. */
export const timeToTolerance = reportFact('tolerance-reached', {
  title: (quantity, point) => {
    const expected = historyOf(point, quantity)?.reached?.expected;
    const day = expected === undefined ? '' : `, on ${expected}`;
    return `time until the drift of the ${quantityInfo(quantity).title} is predicted to reach its tolerance${day}`;
  },
  dimension: 'time',
  compute: (point, quantity) => {
    const { reached, tolerance, errors = [] } = historyOf(point, quantity) ?? {};
    if (reached === undefined || tolerance === undefined) return undefined;
    const { today } = point.settings;
    const derivation = (): Derivation => ({
      inputs: [...quantityInput('tolerance', tolerance), ...errors.map(readingInput), { label: 'today', text: today }],
      formulas: [WEIGHTED_LEAST_SQUARES],
      notes: [`${confidenceWords(reached)}.`],
    });
    return reached.expected === undefined
      ? { value: undefined, missing: `not within ${FURTHEST_YEARS} years`, derivation }
      : { value: secondsBetween(today, reached.expected), derivation };
  },
});

/** The check that is proposed for the first day. */
export const timeToProposedCheck = pointFact('check/proposed', {
  title: (point) => {
    const first = firstProposal(point);
    if (first === undefined) return '';
    const { title } = quantityInfo(first.history.quantity);
    return `time until the check of the ${title} that the visits propose, ${proposedWords(first.proposed)}`;
  },
  dimension: 'time',
  compute: (point) => {
    const first = firstProposal(point);
    if (first === undefined) return undefined;
    const { history, proposed } = first;
    const { today } = point.settings;
    return {
      value: secondsBetween(today, proposed.date),
      derivation: () => ({
        inputs: [...history.errors.map(readingInput), { label: 'today', text: today }],
        formulas: [proposed.formula],
        notes: proposed.notes,
      }),
    };
  },
});

/** The interval that would have brought that check; none where it cannot wait. */
export const proposedInterval = pointFact('check/proposed-interval', {
  title: 'interval of checks that the visits propose',
  dimension: 'time',
  compute: (point) => {
    const first = firstProposal(point);
    if (first === undefined || first.proposed.isAtOnce) return undefined;
    const { history, proposed, planned } = first;
    return {
      value: usualInterval(secondsBetween(planned.last.date, proposed.date)),
      derivation: () => ({
        inputs: [...history.errors.map(readingInput), lastCheckInput(planned.last)],
        relation: 'from the last check to the check proposed, cut to an interval that plans use',
        formulas: [proposed.formula],
        notes: proposed.notes,
      }),
    };
  },
});

function historyOf(point: ResolvedPoint, quantity: QuantityName): History | undefined {
  return historiesOf(point).get(quantity);
}

/** Only beside a planned check. */
function firstProposal(point: ResolvedPoint) {
  const first = firstProposed(historiesOf(point));
  const planned = checkDue(point);
  return first === undefined || planned === undefined ? undefined : { ...first, planned };
}

/** Intervals of checks that plans use, in months. Common practice, no source. */
const USUAL_MONTHS: readonly number[] = [1, 2, 3, 4, 6, 9, 12, 18, 24, 36, 48, 60];

/** The longest usual one within some seconds, or the shortest there is. */
function usualInterval(seconds: number): number {
  return (USUAL_MONTHS.findLast((months) => months * MONTH_SECONDS <= seconds) ?? 1) * MONTH_SECONDS;
}

/** `2026-09-02 as found: -0.7 %RH ± 0.4 %RH, En -0.55` */
function readingInput(of: ReadingError): FactInput {
  const { reading, error, enNumber } = of;
  const { quantity, referenceUncertainty, file, origin } = reading;
  const { difference } = quantityInfo(quantity);
  const uncertain = referenceUncertainty === undefined ? '' : ` ± ${showQuantity(referenceUncertainty, difference)}`;
  const en = enNumber === undefined ? '' : `, ${enWords(enNumber)}`;
  return { label: `${readingWords(of)}:`, text: `${showQuantity(error, difference)}${uncertain}${en}`, file, origin };
}

/** Broken where the tolerance has been reached already. */
export function toleranceAhead(quantity: QuantityName): Limit<ResolvedPoint> {
  return limit(timeToTolerance(quantity), 'at least', () => figureBound(0, 'time'));
}

/** Broken where the visits ask for checks more often than the plan has them. */
export const intervalSuffices = limit(proposedInterval, 'at least', ({ point }: ResolvedPoint) =>
  boundIf(point.checks?.value.interval, writtenBound),
);
