/** How good what a point reports is, and how it goes on: budgets, signals, alarms and checks, with their facts. */
import type { QuantityName } from '../quantity/quantity-names.ts';
import { type ReportBudgets, reportBudgets } from './budget/uncertainty.ts';
import { uncertaintyFacts } from './budget/uncertainty-facts.ts';
import { type CheckPlan, checkFacts, checkPlan } from './checks/plan.ts';
import type { Fact } from './facts/fact.ts';
import { historyFacts } from './history/facts.ts';
import { type History, historiesOf } from './history/history.ts';
import type { ResolvedPoint } from './point.ts';
import { type AlarmUse, alarmUses } from './resolved/alarm-use.ts';
import { type SignalUse, signalUses } from './resolved/signal-use.ts';
import { alarmFacts } from './signals/alarm-facts.ts';
import { signalFacts } from './signals/signal-facts.ts';
import type { SpaceEvaluation } from './space.ts';

export interface Assessment {
  readonly budgets: ReadonlyMap<QuantityName, ReportBudgets>;
  readonly signals: readonly SignalUse[];
  readonly alarms: readonly AlarmUse[];
  readonly checkPlan: CheckPlan;
  /** Of the quantities that were read on visits. */
  readonly histories: ReadonlyMap<QuantityName, History>;
}

/** @param space where its envelopes can be computed with */
export function assess(
  resolved: ResolvedPoint,
  space: SpaceEvaluation | undefined,
): { readonly assessment: Assessment; readonly facts: readonly Fact[] } {
  const signals = signalUses(resolved);
  const alarms = alarmUses(resolved);
  const plan = checkPlan(resolved, space);
  const reports = space === undefined ? [] : reportBudgets(resolved, space, signals);
  const budgets = new Map(reports.map((report) => [report.budgets.quantity, report.budgets]));
  const histories = historiesOf(resolved, reports, plan.due);
  const inSpace =
    space === undefined
      ? []
      : [
          ...reports.flatMap((report) => uncertaintyFacts(report.budgets, space)),
          ...signalFacts(signals, resolved, space),
          ...alarmFacts(alarms, reports, resolved),
        ];
  const assessment = { budgets, signals, alarms, checkPlan: plan, histories };
  return {
    assessment,
    facts: [...inSpace, ...checkFacts(plan, resolved), ...historyFacts(histories, plan.due, resolved.settings.today)],
  };
}
