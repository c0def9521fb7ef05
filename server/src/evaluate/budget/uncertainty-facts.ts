/** The facts of the budgets: the expanded uncertainty of every report, and what the best change would leave of it. */

import { COMBINED_UNCERTAINTY } from '../../physics/metrology/budget.ts';
import { LINEARITY } from '../../physics/metrology/second-order.ts';
import { formatNumber, showQuantity } from '../../quantity/format-quantity.ts';
import { type QuantityName, quantityInfo } from '../../quantity/quantities.ts';
import { AIR_TEMPERATURE_ERRORS } from '../air-temperature/errors.ts';
import type { Derivation } from '../facts/declared-fact.ts';
import type { FactInput } from '../facts/fact.ts';
import { derivationOf } from '../facts/quantity-value.ts';
import type { Setting } from '../facts/site-settings.ts';
import { reportFact } from '../resolved/point-fact.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import type { Budget } from './budget.ts';
import { linearityOf } from './linearity.ts';
import { READING_ERRORS_NOTE } from './reading-error-sources.ts';
import { preparedReport } from './uncertainty.ts';

export const expandedUncertainty = reportFact('expanded-uncertainty', {
  title: (quantity) => titleOf(quantity),
  dimension: (quantity) => quantityInfo(quantity).difference,
  compute: (point, quantity) => {
    const budgets = preparedReport(point, quantity)?.budgets;
    if (budgets === undefined) return undefined;
    const { worst, missing } = budgets;
    if (worst === undefined) {
      const derivation = () => ({ inputs: [], ...relationOf(quantity) });
      return { value: undefined, missing: missing ?? 'not known', derivation };
    }
    const derivation = () => ({ ...explained(worst, point), notes: budgetNotes(worst) });
    return { value: worst.expandedUncertainty, at: worst.at, derivation };
  },
});

/** With the one change that helps most. */
export const improvedUncertainty = reportFact('improved-uncertainty', {
  title: (quantity, point) => {
    const words = preparedReport(point, quantity)?.budgets.worst?.improvement?.words;
    return `${titleOf(quantity)} with ${words}, at best`;
  },
  dimension: (quantity) => quantityInfo(quantity).difference,
  compute: (point, quantity) => {
    const worst = preparedReport(point, quantity)?.budgets.worst;
    if (worst?.improvement === undefined) return undefined;
    const notes = ['What would be left at the same corner if the contributions that it lessens vanished.'];
    const derivation = () => ({ ...explained(worst, point), notes });
    return { value: worst.improvement.expandedUncertainty, at: worst.at, derivation };
  },
});

function titleOf(quantity: QuantityName): string {
  return `expanded uncertainty of the ${quantityInfo(quantity).title}`;
}

function relationOf(quantity: QuantityName) {
  const { relation, formulas } = derivationOf(quantity);
  return {
    relation: `U = k · u, u² = Σ (∂Q/∂x · u(x))², e = U(sensor) · f(ts, p) · ew(ts); ${relation}`,
    formulas: [COMBINED_UNCERTAINTY, ...formulas],
  };
}

function explained(worst: Budget, { space, settings }: ResolvedPoint): Derivation {
  const phase = space?.phases.find(({ envelope }) => envelope.phase === worst.at.phase);
  const inputs = [
    ...worst.contributions.flatMap((contribution) => contribution.inputs()),
    coverageInput(settings.coverage),
    ...(phase?.envelope.inputs ?? []),
  ];
  return { inputs, ...relationOf(worst.quantity) };
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

const UNCORRECTED: readonly string[] = [...AIR_TEMPERATURE_ERRORS, 'fixed-temperature'];

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
