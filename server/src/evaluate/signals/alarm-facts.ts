/** The facts of the alarms: how often they miss and how often they cry wolf, and the hysteresis that noise asks for. */

import {
  roundDownToStep,
  roundStepBelow,
  roundUpToStep,
  sensibleClear,
} from '../../physics/mathematics/sensible-steps.ts';
import {
  ALARM_ERRORS,
  alarmErrorProbability,
  guardBandedLimit,
  LEAST_HYSTERESIS,
  leastHysteresis,
} from '../../physics/metrology/alarm.ts';
import { COMBINED_UNCERTAINTY } from '../../physics/metrology/budget.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { quantityInfo } from '../../quantity/quantity-names.ts';
import type { Budget } from '../budget/budget.ts';
import type { PreparedReport } from '../budget/uncertainty.ts';
import { budgetNotes } from '../budget/uncertainty-facts.ts';
import { REPEATABILITY_NOTE, sourceInfo } from '../budget/uncertainty-source.ts';
import type { Fact, FactInput } from '../facts/fact.ts';
import { fromUsualUnit, inUsualUnit } from '../facts/usual-unit.ts';
import type { ResolvedPoint } from '../point.ts';
import type { AlarmUse } from '../resolved/alarm-use.ts';
import { budgetNearLimit } from './alarm-budget.ts';
import { depressionFacts } from './alarm-depression.ts';

export function alarmFacts(
  alarms: readonly AlarmUse[],
  reports: readonly PreparedReport[],
  { point }: ResolvedPoint,
): readonly Fact[] {
  return alarms.flatMap((alarm) => {
    const sources = reports.find(({ budgets }) => budgets.quantity === alarm.quantity)?.sources;
    const budget = sources === undefined ? undefined : budgetNearLimit(alarm, sources);
    if (budget === undefined) return [];
    const tolerance = point.reports?.value.get(alarm.quantity)?.value.tolerance;
    const inputs = [limitInput(alarm), uncertaintyInput(budget)];
    const always = [
      nearLimit(alarm, budget, inputs),
      ...hysteresisFacts(alarm, budget, inputs),
      ...depressionFacts(alarm, budget),
    ];
    if (tolerance === undefined) return always;
    const text = showQuantity(tolerance.value.value, tolerance.value.dimension);
    const withTolerance = [...inputs, { label: 'tolerance', text, origin: tolerance.origin }];
    return [...always, ...errorFacts(alarm, budget, tolerance.value.value, withTolerance)];
  });
}

function limitInput({ direction, limit }: AlarmUse): FactInput {
  return { label: direction, text: showQuantity(limit.value.value, limit.value.dimension), origin: limit.origin };
}

function uncertaintyInput({ quantity, standardUncertainty }: Budget): FactInput {
  const text = showQuantity(standardUncertainty, quantityInfo(quantity).difference);
  return { label: 'standard uncertainty near the limit', text };
}

function nearLimit({ name, quantity }: AlarmUse, budget: Budget, inputs: readonly FactInput[]): Fact {
  const { title, difference } = quantityInfo(quantity);
  return {
    id: `alarm/${name}/expanded-uncertainty`,
    title: `expanded uncertainty of the ${title} near the limit of ${name}`,
    dimension: difference,
    value: budget.expandedUncertainty,
    at: budget.at,
    inputs: [...inputs, ...budget.contributions.flatMap((contribution) => contribution.inputs)],
    relation: 'U = k · u',
    formulas: [COMBINED_UNCERTAINTY],
    get notes() {
      return budgetNotes(budget);
    },
  };
}

function errorFacts(
  { name, direction, limit, quantity }: AlarmUse,
  { at, standardUncertainty }: Budget,
  tolerance: number,
  inputs: readonly FactInput[],
): readonly Fact[] {
  if (!(tolerance > 0)) return [];
  const probability = asProbability(alarmErrorProbability(tolerance, standardUncertainty));
  const { dimension, title } = quantityInfo(quantity);
  const guarded = guardBandedLimit(limit.value.value, direction, tolerance, standardUncertainty);
  const base = { at, inputs, formulas: [ALARM_ERRORS], notes: [] };
  const ofErrors = { value: probability, dimension: 'percentage', ...base } as const;
  return [
    {
      id: `alarm/${name}/missed-alarm`,
      title: `probability that ${name} stays silent with the ${title} one tolerance beyond the limit`,
      ...ofErrors,
    },
    {
      id: `alarm/${name}/false-alarm`,
      title: `probability that ${name} sounds with the ${title} one tolerance inside the limit`,
      ...ofErrors,
    },
    ...(guarded === limit.value.value
      ? []
      : [
          {
            dimension,
            id: `alarm/${name}/guard-banded-limit`,
            title: `limit of ${name} at which it misses one excursion in twenty at the most`,
            value: roundedInwards(guarded, limit.value.value, dimension),
            ...base,
          },
        ]),
  ];
}

/** The tail of a distribution that is only taken to be normal says nothing below a thousandth of a percent. */
function asProbability(probability: number): number {
  return Math.round(probability * 1e5) / 1e5;
}

/** To a step of 1, 2 or 5 that is no more than the guard band itself. */
function roundedInwards(guarded: number, limit: number, dimension: AlarmDimension): number {
  const [to, from] = [inUsualUnit(guarded, dimension), inUsualUnit(limit, dimension)];
  if (to === from) return limit;
  const step = roundStepBelow(Math.abs(to - from));
  return fromUsualUnit(to < from ? roundDownToStep(to, step) : roundUpToStep(to, step), dimension);
}

type AlarmDimension = Fact['dimension'];

function hysteresisFacts(
  { name, direction, limit, quantity, clear }: AlarmUse,
  budget: Budget,
  inputs: readonly FactInput[],
): readonly Fact[] {
  const { dimension, difference } = quantityInfo(quantity);
  const noise = Math.hypot(
    ...budget.contributions.map(({ kind, resultUncertainty }) => sourceInfo(kind).changingPart * resultUncertainty),
  );
  const least = leastHysteresis(noise);
  const [from, by] = [inUsualUnit(limit.value.value, dimension), inUsualUnit(least, difference)];
  const base = {
    at: budget.at,
    inputs: [
      ...inputs,
      { label: 'noise', text: showQuantity(noise, difference) },
      ...(clear === undefined
        ? []
        : [{ label: 'clear', text: showQuantity(clear.value.value, dimension), origin: clear.origin }]),
    ],
    formulas: [LEAST_HYSTERESIS],
    notes: [REPEATABILITY_NOTE],
  };
  return [
    {
      id: `alarm/${name}/least-hysteresis`,
      title: `least hysteresis of ${name}`,
      dimension: difference,
      value: least,
      ...base,
    },
    {
      id: `alarm/${name}/clear-to-set`,
      title: `value at which ${name} should clear`,
      dimension,
      value: fromUsualUnit(sensibleClear(from, direction, by), dimension),
      ...base,
    },
  ];
}
