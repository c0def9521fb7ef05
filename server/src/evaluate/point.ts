/** One point as rules and views ask it: what it is, its facts, its budgets and how it goes on. */
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

/** The getters of all points, so that thousands share them. */
const ASSESSMENT: Assessment & ThisType<ResolvedPoint> = {
  get budgets() {
    return reportBudgets(this);
  },
  get signals() {
    return signalUses(this);
  },
  get alarms() {
    return alarmUses(this);
  },
  get checkPlan() {
    return { due: checkDue(this), salts: saltPlan(this) };
  },
  get histories() {
    return historiesOf(this);
  },
};

export function evaluatePoint(inputs: PointInputs): PointEvaluation {
  return Object.setPrototypeOf(resolvePoint(inputs), ASSESSMENT);
}
