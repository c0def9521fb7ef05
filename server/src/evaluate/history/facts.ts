/** The facts of the histories: the last error, the drift, when it reaches the tolerance, and the check proposed for it. */
import type { CalendarDate } from '../../model/model-types.generated.ts';
import { EN_NUMBER } from '../../physics/metrology/decision.ts';
import { WEIGHTED_LEAST_SQUARES } from '../../physics/metrology/drift-fit.ts';
import { formatNumber, showEstimate, showQuantity } from '../../quantity/format-quantity.ts';
import { type QuantityName, quantityInfo } from '../../quantity/quantity-names.ts';
import { type CheckDue, lastCheckInput } from '../checks/due.ts';
import { MONTH_SECONDS, secondsBetween } from '../facts/calendar.ts';
import type { Fact, FactInput } from '../facts/fact.ts';
import { CONFIDENCE, FURTHEST_YEARS } from './drift-forecast.ts';
import { firstProposed, type History } from './history.ts';
import type { ReadingError } from './reading-error.ts';
import { confidenceWords, enWords, proposedWords, readingWords } from './words.ts';

type Histories = ReadonlyMap<QuantityName, History>;

export function historyFacts(
  histories: Histories,
  planned: CheckDue | undefined,
  today: CalendarDate,
): readonly Fact[] {
  const ofQuantities = [...histories.values()].flatMap((history) => factsOf(history, today));
  return [...ofQuantities, ...proposal(histories, today, planned)];
}

function factsOf(history: History, today: CalendarDate): readonly Fact[] {
  const last = history.errors.at(-1);
  return [
    ...(last === undefined ? [] : [lastError(history, last)]),
    driftFact(history),
    ...toleranceReachedFact(history, today),
  ];
}

function lastError({ quantity }: History, last: ReadingError): Fact {
  const { reading, error, enNumber, pointUncertainty } = last;
  const { title, dimension, difference } = quantityInfo(quantity);
  const { shown, reference, referenceUncertainty, file, origin } = reading;
  const uncertainty = (of: string, value: number | undefined): readonly FactInput[] =>
    value === undefined ? [] : [{ label: `uncertainty of the ${of}`, text: showQuantity(value, difference) }];
  const written = { file, origin };
  return {
    id: `${quantity}/last-error`,
    title: `error of the ${title} on ${readingWords(last)}`,
    dimension: difference,
    value: error,
    inputs: [
      { label: 'shown', text: showQuantity(shown, dimension), ...written },
      { label: 'reference', text: showQuantity(reference, dimension), ...written },
      ...uncertainty('reference', referenceUncertainty).map((input) => ({ ...input, ...written })),
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

function driftFact({ quantity, drift, errors }: History): Fact {
  const { title, difference } = quantityInfo(quantity);
  const base = {
    id: `${quantity}/drift`,
    title: `drift of the ${title} in a year`,
    dimension: difference,
    inputs: errors.map((each) => readingInput(each)),
    formulas: [WEIGHTED_LEAST_SQUARES],
  };
  if (!drift.ok) return { ...base, value: undefined, missing: drift.problem, notes: [] };
  const { segment, perYear, perYearUncertainty, isSignificant } = drift.value;
  const confidence = showQuantity(CONFIDENCE, 'percentage');
  const adjusted = segment.stretches.some(({ adjustedSince }) => adjustedSince !== 0);
  const notes = [
    `${showEstimate(perYear, perYearUncertainty, difference)} with a confidence of ${confidence}${isSignificant ? '' : ', so it may as well be none'}; from ${segment.errors.length} readings on ${segment.visits} visits up to ${segment.last}.`,
    adjusted
      ? 'Errors as found are moved by the adjustments made since, as far as as-left readings tell them.'
      : undefined,
    drift.value.fit.isWeighted
      ? undefined
      : 'Not every reference states its uncertainty: the scatter of the readings stands for it.',
  ];
  return { ...base, value: perYear, notes: notes.filter((note) => note !== undefined) };
}

function toleranceReachedFact(history: History, today: CalendarDate): readonly Fact[] {
  const { quantity, reached, tolerance, errors } = history;
  if (reached === undefined || tolerance === undefined) return [];
  const { title } = quantityInfo(quantity);
  const { expected } = reached;
  const { value, origin } = tolerance;
  const base = {
    id: `${quantity}/tolerance-reached`,
    title: `time until the drift of the ${title} is predicted to reach its tolerance${expected === undefined ? '' : `, on ${expected}`}`,
    dimension: 'time' as const,
    inputs: [
      { label: 'tolerance', text: showQuantity(value.value, value.dimension), origin },
      ...errors.map(readingInput),
      { label: 'today', text: today },
    ],
    formulas: [WEIGHTED_LEAST_SQUARES],
    notes: [`${confidenceWords(reached)}.`],
  };
  return expected === undefined
    ? [{ ...base, value: undefined, missing: `not within ${FURTHEST_YEARS} years` }]
    : [{ ...base, value: secondsBetween(today, expected) }];
}

/** The check that is proposed for the first day, and the interval that would have brought it. */
function proposal(histories: Histories, today: CalendarDate, planned: CheckDue | undefined): readonly Fact[] {
  const first = firstProposed(histories);
  if (first === undefined || planned === undefined) return [];
  const { history, proposed } = first;
  const { title } = quantityInfo(history.quantity);
  const base = { dimension: 'time' as const, formulas: [proposed.formula], notes: proposed.notes };
  const readings = history.errors.map(readingInput);
  const check: Fact = {
    ...base,
    id: 'check/proposed',
    title: `time until the check of the ${title} that the visits propose, ${proposedWords(proposed)}`,
    value: secondsBetween(today, proposed.date),
    inputs: [...readings, { label: 'today', text: today }],
  };
  if (proposed.isAtOnce) return [check];
  const interval: Fact = {
    ...base,
    id: 'check/proposed-interval',
    title: 'interval of checks that the visits propose',
    value: usualInterval(secondsBetween(planned.last.date, proposed.date)),
    inputs: [...readings, lastCheckInput(planned.last)],
    relation: 'from the last check to the check proposed, cut to an interval that plans use',
  };
  return [check, interval];
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
