/** The facts of the budgets: the expanded uncertainty of every report, and what the best change would leave of it. */
import { COMBINED_UNCERTAINTY } from '../../physics/metrology/budget.ts';
import { LINEARITY } from '../../physics/metrology/second-order.ts';
import { formatNumber, showQuantity } from '../../quantity/format-quantity.ts';
import { quantityInfo } from '../../quantity/quantity-names.ts';
import type { Fact, FactInput } from '../facts/fact.ts';
import { derivationOf } from '../facts/quantity-value.ts';
import type { Setting } from '../facts/site-settings.ts';
import type { SpaceEvaluation } from '../space.ts';
import type { Budget } from './budget.ts';
import { linearityOf } from './linearity.ts';
import { READING_ERRORS_NOTE } from './reading-error-sources.ts';
import type { ReportBudgets } from './uncertainty.ts';

export function uncertaintyFacts(budgets: ReportBudgets, space: SpaceEvaluation): readonly Fact[] {
  const { quantity, worst, missing } = budgets;
  const { title, difference } = quantityInfo(quantity);
  const { relation, formulas } = derivationOf(quantity);
  const named = { id: `${quantity}/expanded-uncertainty`, title: `expanded uncertainty of the ${title}` };
  const base = {
    dimension: difference,
    relation: `U = k · u, u² = Σ (∂Q/∂x · u(x))², e = U(sensor) · f(ts, p) · ew(ts); ${relation}`,
    formulas: [COMBINED_UNCERTAINTY, ...formulas],
  };
  if (worst === undefined)
    return [{ value: undefined, missing: missing ?? 'not known', inputs: [], notes: [], ...named, ...base }];
  const phase = space.phases.find(({ envelope }) => envelope.phase === worst.at.phase);
  const found = {
    at: worst.at,
    inputs: [
      ...worst.contributions.flatMap(({ inputs }) => inputs),
      coverageInput(space.settings.coverage),
      ...(phase?.envelope.inputs ?? []),
    ],
    ...base,
  };
  const expanded = {
    value: worst.expandedUncertainty,
    get notes() {
      return budgetNotes(worst);
    },
    ...named,
    ...found,
  };
  if (worst.improvement === undefined) return [expanded];
  const { words, expandedUncertainty: value } = worst.improvement;
  const improved = {
    id: `${quantity}/improved-uncertainty`,
    title: `${named.title} with ${words}, at best`,
    value,
    notes: ['What would be left at the same corner if the contributions that it lessens vanished.'],
    ...found,
  };
  return [expanded, improved];
}

function coverageInput({ value, origin }: Setting): FactInput {
  const text = `k = ${formatNumber(value, 2)}`;
  return { label: 'coverage', text, ...(origin === undefined ? {} : { origin }) };
}

/** What holds of a budget besides its numbers. It costs as much as the budget itself, and is asked for when it is shown. */
export function budgetNotes(budget: Budget): readonly string[] {
  const { signal, contributions, leftOut } = budget;
  const corrected = contributions.some(({ kind }) => UNCORRECTED.includes(kind));
  const notes = [
    signal === undefined ? undefined : `Read through ${signal}; of the signals that carry it, it adds most.`,
    corrected ? READING_ERRORS_NOTE : undefined,
    linearityNote(budget),
    leftOut.length === 0 ? undefined : `Not counted, so that this is the least: ${leftOut.join('; ')}.`,
  ];
  return notes.filter((note) => note !== undefined);
}

const UNCORRECTED: readonly string[] = [
  'stem-conduction',
  'radiation',
  'head-warmth',
  'gradient',
  'lag',
  'fixed-temperature',
];

/** Says where a first-order budget is not good enough. */
function linearityNote(budget: Budget): string | undefined {
  const linearity = linearityOf(budget);
  if (linearity === undefined) return 'The quantity ends within these uncertainties: the budget is a rough one.';
  if (linearity.isLinearEnough) return undefined;
  const { quantity, coverageFactor } = budget;
  const { difference } = quantityInfo(quantity);
  const show = (value: number): string => showQuantity(value, difference);
  const { firstOrderUncertainty, secondOrderUncertainty, meanShift } = linearity;
  return (
    `The relation bends over these uncertainties (${LINEARITY.source}): the second order makes ` +
    `${show(coverageFactor * secondOrderUncertainty)} out of ${show(coverageFactor * firstOrderUncertainty)} and shifts the mean by ${show(meanShift)}.`
  );
}
