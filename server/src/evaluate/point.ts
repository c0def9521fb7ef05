/** One point as rules and views ask it: what it is, its facts, its budgets and how it goes on. */
import { withLazyFields } from '../base/lazy-fields.ts';
import type { QuantityName } from '../quantity/quantities.ts';
import { type ReportBudgets, reportBudgets } from './budget/uncertainty.ts';
import { type CheckDue, checkDue } from './checks/due.ts';
import { type SaltPlan, saltPlan } from './checks/salts.ts';
import { type History, historiesOf } from './history/history.ts';
import { type AlarmUse, alarmUses } from './resolved/alarm-use.ts';
import { type PointInputs, type ResolvedPoint, resolvePoint } from './resolved/resolved-point.ts';
import { type SignalUse, signalUses } from './resolved/signal-use.ts';

export interface PointEvaluation extends ResolvedPoint, Assessment {}

/** Each computed when it is asked for. */
export interface Assessment {
  readonly budgets: ReadonlyMap<QuantityName, ReportBudgets>;
  readonly signals: readonly SignalUse[];
  readonly alarms: readonly AlarmUse[];
  readonly checkPlan: CheckPlan;
  /** Of the quantities that were read on visits. */
  readonly histories: ReadonlyMap<QuantityName, History>;
}

/** The next check and what it compares with. */
export interface CheckPlan {
  readonly due: CheckDue | undefined;
  readonly salts: SaltPlan | undefined;
}

export function evaluatePoint(inputs: PointInputs): PointEvaluation {
  const point = resolvePoint(inputs);
  return withLazyFields<ResolvedPoint, Assessment>(point, {
    budgets: () => reportBudgets(point),
    signals: () => signalUses(point),
    alarms: () => alarmUses(point),
    checkPlan: () => ({ due: checkDue(point), salts: saltPlan(point) }),
    histories: () => historiesOf(point),
  });
}
