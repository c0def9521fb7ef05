/** The uncertainty of an alarm's quantity where it matters: in the air that takes it to the limit. */
import type { AirState } from '../../physics/air/moist-air.ts';
import { type Budget, varianceAt } from '../budget/budget.ts';
import { NO_DEVIATION, reportedValue, sensedState } from '../budget/measurement.ts';
import type { PhaseSources, ReportSources } from '../budget/report-sources.ts';
import { budgetIn } from '../budget/uncertainty.ts';
import type { AlarmUse } from '../resolved/alarm-use.ts';

/**
 * The budget of the least certain state among those within a tolerance of the limit; where the envelope does not come
 * that close, among those within a tolerance of the nearest.
 */
export function budgetNearLimit({ limit }: AlarmUse, sources: ReportSources): Budget | undefined {
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
