/** Whether a first-order budget is good enough: nearly saturated or nearly boiling air may bend the relation. */
import { checkLinearity, type LinearityCheck } from '../../physics/metrology/second-order.ts';
import type { Budget } from './budget.ts';
import { type MeasuredInput, NO_DEVIATION, reportedValue, sensedState } from './measurement.ts';

/**
 * All that enters by one input acts through it together. What a signal adds to the reported value bends nothing and is
 * left out.
 * @returns undefined where the quantity ends so close by that it cannot be told
 */
export function linearityOf({ measurement, state, contributions }: Budget): LinearityCheck | undefined {
  const sensed = sensedState(state, measurement.rise);
  const variances = new Map<MeasuredInput, number>();
  for (const { enters, standardUncertainty } of contributions)
    variances.set(enters, (variances.get(enters) ?? 0) + standardUncertainty ** 2);
  const names = [...variances.keys()].filter((name) => name !== 'reported-value');
  const inputs = names.map((name) => ({ estimate: 0, standardUncertainty: Math.sqrt(variances.get(name) ?? 0) }));
  return checkLinearity((values) => {
    const deviations: Record<MeasuredInput, number> = { ...NO_DEVIATION };
    for (const [index, name] of names.entries()) deviations[name] = values[index] ?? 0;
    return reportedValue(measurement, sensed, deviations);
  }, inputs);
}
