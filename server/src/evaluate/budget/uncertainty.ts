/** How uncertain every report of a point is: a budget for each phase, at the corner where the uncertainty is largest. */
import type { Outcome } from '../../base/outcome.ts';
import { remembered, rememberedOf } from '../../base/remembered.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import type { QuantityName } from '../../quantity/quantities.ts';
import { extremeOf } from '../air/extreme.ts';
import { completeSpace } from '../resolved/point-fact.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { type Budget, budgetAt, varianceAt } from './budget.ts';
import { type PhaseSources, type ReportSources, reportSources } from './report-sources.ts';

/** The budgets of one report. */
export interface ReportBudgets {
  readonly quantity: QuantityName;
  /** One for each phase, in the order of time, made when they are asked for; none where something is lacking. */
  readonly phases: () => readonly Budget[];
  /** The one with the largest uncertainty. */
  readonly worst: Budget | undefined;
  /** In words, without its stop, why there is none. */
  readonly missing: string | undefined;
}

/** With what they were computed from, for the budget at another state. */
export interface PreparedReport {
  readonly budgets: ReportBudgets;
  readonly sources: ReportSources | undefined;
}

/** Undefined for a quantity that is not reported, or in a space that cannot be computed with. */
export const preparedReport = rememberedOf(
  (point: ResolvedPoint, quantity: QuantityName): PreparedReport | undefined => {
    const space = completeSpace(point);
    const evaluated = point.reports.find((candidate) => candidate.quantity === quantity);
    if (space === undefined || evaluated === undefined) return undefined;
    return prepared(quantity, reportSources(evaluated, point, space));
  },
);

/** The budgets of all reports. */
export const reportBudgets = remembered(
  (point: ResolvedPoint): ReadonlyMap<QuantityName, ReportBudgets> =>
    new Map(
      point.reports.flatMap(({ quantity }) => {
        const budgets = preparedReport(point, quantity)?.budgets;
        return budgets === undefined ? [] : [[quantity, budgets]];
      }),
    ),
);

function prepared(quantity: QuantityName, gathered: Outcome<ReportSources, string>): PreparedReport {
  if (!gathered.ok)
    return { budgets: { quantity, phases: () => [], worst: undefined, missing: gathered.problem }, sources: undefined };
  const sources = gathered.value;
  const leastCertain = sources.phases.flatMap((phase) => leastCertainIn(sources, phase) ?? []);
  const worstOfAll = leastCertain.reduce<LeastCertain | undefined>(lessCertain, undefined);
  const worst = worstOfAll && budgetIn(sources, worstOfAll.phase, worstOfAll.state);
  const missing = worst === undefined ? 'no state of the envelope has it' : undefined;
  const phases = (): readonly Budget[] =>
    leastCertain.flatMap((found) =>
      found === worstOfAll ? (worst ?? []) : (budgetIn(sources, found.phase, found.state) ?? []),
    );
  return { budgets: { quantity, phases, worst, missing }, sources };
}

/** Where in a phase a report is least certain. */
interface LeastCertain {
  readonly phase: PhaseSources;
  readonly state: AirState;
  readonly variance: number;
}

function leastCertainIn({ measurement }: ReportSources, phase: PhaseSources): LeastCertain | undefined {
  const variance = (state: AirState): number | undefined => varianceAt(measurement, phase.sources, state);
  const worst = extremeOf(phase.sampled, 'highest', variance);
  return worst === undefined ? undefined : { phase, state: worst.state, variance: worst.value };
}

function lessCertain(one: LeastCertain | undefined, other: LeastCertain): LeastCertain {
  return one !== undefined && one.variance >= other.variance ? one : other;
}

export function budgetIn(
  { measurement, terms }: ReportSources,
  phase: PhaseSources,
  state: AirState,
): Budget | undefined {
  return budgetAt(measurement, phase, state, phase.phase.envelope.phase, terms);
}
