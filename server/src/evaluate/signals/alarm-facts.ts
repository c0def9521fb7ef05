/** The facts of the alarms: how often they miss and how often they cry wolf, and the hysteresis that noise asks for. */
import { rememberedOf } from '../../base/remembered.ts';
import { roundDownToStep, roundStepBelow, roundUpToStep } from '../../physics/mathematics/sensible-steps.ts';
import {
  ALARM_ERRORS,
  alarmErrorProbability,
  guardBandedLimit,
  LEAST_HYSTERESIS,
  leastHysteresis as leastHysteresisOf,
  sensibleClear,
} from '../../physics/metrology/alarm.ts';
import { COMBINED_UNCERTAINTY } from '../../physics/metrology/budget.ts';
import type { Dimension } from '../../quantity/dimension.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { quantityInfo } from '../../quantity/quantities.ts';
import { budgetNotes } from '../budget/uncertainty-facts.ts';
import { REPEATABILITY_NOTE, sourceInfo } from '../budget/uncertainty-source.ts';
import type { Computed, Derivation } from '../facts/declared-fact.ts';
import type { FactInput } from '../facts/fact.ts';
import { quantityInput } from '../facts/inputs.ts';
import { fromUsualUnit, inUsualUnit } from '../facts/usual-unit.ts';
import { alarmUses } from '../resolved/alarm-use.ts';
import { alarmFact } from '../resolved/point-fact.ts';
import { type ResolvedPoint, toleranceOf } from '../resolved/resolved-point.ts';
import { type JudgedAlarm, judgedAlarm } from './alarm-budget.ts';

export const uncertaintyNearLimit = alarmFact('expanded-uncertainty', {
  title: (name, point) => `expanded uncertainty of the ${quantityOf(point, name).title} near the limit of ${name}`,
  dimension: differenceOf,
  compute: ofJudged((judged) => ({
    value: judged.budget.expandedUncertainty,
    at: judged.budget.at,
    derivation: () => ({
      inputs: [...commonInputs(judged), ...judged.budget.contributions.flatMap(({ inputs }) => inputs())],
      relation: 'U = k · u',
      formulas: [COMBINED_UNCERTAINTY],
      notes: budgetNotes(judged.budget),
    }),
  })),
});

/** The least that keeps noise from sounding an alarm again and again. */
export const leastHysteresis = alarmFact('least-hysteresis', {
  title: (name) => `least hysteresis of ${name}`,
  dimension: differenceOf,
  compute: ofJudged((judged) => hysteresisFact(judged, leastHysteresisOf(noiseOf(judged)))),
});

export const clearToSet = alarmFact('clear-to-set', {
  title: (name) => `value at which ${name} should clear`,
  dimension: dimensionOf,
  compute: ofJudged((judged) => {
    const { direction, limit, quantity } = judged.alarm;
    const { dimension, difference } = quantityInfo(quantity);
    const least = leastHysteresisOf(noiseOf(judged));
    const [from, by] = [inUsualUnit(limit.value.value, dimension), inUsualUnit(least, difference)];
    return hysteresisFact(judged, fromUsualUnit(sensibleClear(from, direction, by), dimension));
  }),
});

export const missedAlarm = alarmFact('missed-alarm', {
  title: (name, point) =>
    `probability that ${name} stays silent with the ${quantityOf(point, name).title} one tolerance beyond the limit`,
  dimension: 'percentage',
  compute: ofTolerated((tolerated) => errorFact(tolerated, tolerated.probability)),
});

export const falseAlarm = alarmFact('false-alarm', {
  title: (name, point) =>
    `probability that ${name} sounds with the ${quantityOf(point, name).title} one tolerance inside the limit`,
  dimension: 'percentage',
  compute: ofTolerated((tolerated) => errorFact(tolerated, tolerated.probability)),
});

export const guardBandedAlarmLimit = alarmFact('guard-banded-limit', {
  title: (name) => `limit of ${name} at which it misses one excursion in twenty at the most`,
  dimension: dimensionOf,
  compute: ofTolerated((tolerated) => {
    const { alarm, budget, tolerance } = tolerated;
    const { value } = alarm.limit.value;
    const guarded = guardBandedLimit(value, alarm.direction, tolerance, budget.standardUncertainty);
    if (guarded === value) return undefined;
    return errorFact(tolerated, roundedInwards(guarded, value, quantityInfo(alarm.quantity).dimension));
  }),
});

function ofJudged(compute: (judged: JudgedAlarm) => Computed | undefined) {
  return (point: ResolvedPoint, name: string): Computed | undefined => {
    const judged = judgedAlarm(point, name);
    return judged === undefined ? undefined : compute(judged);
  };
}

interface ToleratedAlarm extends JudgedAlarm {
  /** Of the report of its quantity, above 0. */
  readonly tolerance: number;
  /** That it errs either way, from 0 to 1. */
  readonly probability: number;
  readonly inputs: () => readonly FactInput[];
}

function ofTolerated(compute: (tolerated: ToleratedAlarm) => Computed | undefined) {
  return (point: ResolvedPoint, name: string): Computed | undefined => {
    const tolerated = toleratedAlarm(point, name);
    return tolerated === undefined ? undefined : compute(tolerated);
  };
}

const toleratedAlarm = rememberedOf((point: ResolvedPoint, name: string): ToleratedAlarm | undefined => {
  const judged = judgedAlarm(point, name);
  if (judged === undefined) return undefined;
  const tolerance = toleranceOf(point, judged.alarm.quantity);
  if (tolerance === undefined || !(tolerance.value.value > 0)) return undefined;
  const probability = asProbability(alarmErrorProbability(tolerance.value.value, judged.budget.standardUncertainty));
  const inputs = () => [...commonInputs(judged), ...quantityInput('tolerance', tolerance)];
  return { ...judged, tolerance: tolerance.value.value, probability, inputs };
});

function errorFact({ budget, inputs }: ToleratedAlarm, value: number): Computed {
  return { value, at: budget.at, derivation: () => ({ inputs: inputs(), formulas: [ALARM_ERRORS] }) };
}

/** The tail of a distribution that is only taken to be normal says nothing below a thousandth of a percent. */
function asProbability(probability: number): number {
  return Math.round(probability * 1e5) / 1e5;
}

/** To a step of 1, 2 or 5 that is no more than the guard band itself. */
function roundedInwards(guarded: number, limit: number, dimension: Dimension): number {
  const [to, from] = [inUsualUnit(guarded, dimension), inUsualUnit(limit, dimension)];
  if (to === from) return limit;
  const step = roundStepBelow(Math.abs(to - from));
  return fromUsualUnit(to < from ? roundDownToStep(to, step) : roundUpToStep(to, step), dimension);
}

function hysteresisFact(judged: JudgedAlarm, value: number): Computed {
  return { value, at: judged.budget.at, derivation: () => explainedHysteresis(judged) };
}

function explainedHysteresis(judged: JudgedAlarm): Derivation {
  const { quantity, clear } = judged.alarm;
  const noise = { label: 'noise', text: showQuantity(noiseOf(judged), quantityInfo(quantity).difference) };
  const inputs = [...commonInputs(judged), noise, ...quantityInput('clear', clear)];
  return { inputs, formulas: [LEAST_HYSTERESIS], notes: [REPEATABILITY_NOTE] };
}

/** What changes from one reading to the next, in the difference of the quantity. */
function noiseOf({ budget }: JudgedAlarm): number {
  return Math.hypot(
    ...budget.contributions.map(({ kind, resultUncertainty }) => sourceInfo(kind).changingPart * resultUncertainty),
  );
}

function commonInputs({ alarm, budget }: JudgedAlarm): readonly FactInput[] {
  const { quantity, standardUncertainty } = budget;
  const text = showQuantity(standardUncertainty, quantityInfo(quantity).difference);
  return [...quantityInput(alarm.direction, alarm.limit), { label: 'standard uncertainty near the limit', text }];
}

function quantityOf(point: ResolvedPoint, name: string) {
  return quantityInfo(alarmUses(point).find((use) => use.name === name)?.quantity ?? 'relative-humidity');
}

function dimensionOf(name: string, point: ResolvedPoint): Dimension {
  return quantityOf(point, name).dimension;
}

function differenceOf(name: string, point: ResolvedPoint): Dimension {
  return quantityOf(point, name).difference;
}
