/** The uncertainty of an alarm's quantity where it matters: in the air that takes it to the limit. */
import { rememberedOf } from '../../base/remembered.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { type Budget, varianceAt } from '../budget/budget.ts';
import { NO_DEVIATION, reportedValue, sensedState } from '../budget/measurement.ts';
import type { PhaseSources, ReportSources } from '../budget/report-sources.ts';
import { budgetIn, preparedReport } from '../budget/uncertainty.ts';
import { type AlarmUse, alarmUses } from '../resolved/alarm-use.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';

export interface JudgedAlarm {
  readonly alarm: AlarmUse;
  readonly budget: Budget;
}

/** Undefined for an alarm that cannot be read, or of whose quantity there is no budget. */
export const judgedAlarm = rememberedOf((point: ResolvedPoint, name: string): JudgedAlarm | undefined => {
  const alarm = alarmUses(point).find((use) => use.name === name);
  const sources = alarm === undefined ? undefined : preparedReport(point, alarm.quantity)?.sources;
  const budget = alarm === undefined || sources === undefined ? undefined : budgetNearLimit(alarm, sources);
  return alarm === undefined || budget === undefined ? undefined : { alarm, budget };
});

/**
 * The budget of the least certain state among those within a tolerance of the limit; where the envelope does not come
 * that close, among those within a tolerance of the nearest.
 */
function budgetNearLimit({ limit }: AlarmUse, sources: ReportSources): Budget | undefined {
  const { measurement, terms, phases } = sources;
  const states: { readonly phase: PhaseSources; readonly state: AirState; readonly distance: number }[] = [];
  for (const phase of phases) {
    for (const { state } of phase.sampled.samples) {
      const value = reportedValue(measurement, sensedState(state, measurement.rise), NO_DEVIATION);
      if (value !== undefined) states.push({ phase, state, distance: Math.abs(value - limit.value.value) });
    }
  }
  const within = Math.min(...states.map(({ distance }) => distance)) + (terms.tolerance ?? 0);
  let worst: { readonly phase: PhaseSources; readonly state: AirState; readonly variance: number } | undefined;
  for (const { phase, state, distance } of states) {
    if (distance > within) continue;
    const variance = varianceAt(measurement, phase.sources, state) ?? 0;
    if (worst === undefined || variance > worst.variance) worst = { phase, state, variance };
  }
  return worst === undefined ? undefined : budgetIn(sources, worst.phase, worst.state);
}
