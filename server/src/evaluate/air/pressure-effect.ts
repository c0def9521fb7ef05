/** What it costs a report that its pressure is only that of the altitude. */
import { valueIfOk } from '../../base/outcome.ts';
import type { QuantityName } from '../../quantity/quantities.ts';
import type { Computed } from '../facts/declared-fact.ts';
import { derivationOf, quantityValue } from '../facts/quantity-value.ts';
import type { ReportPressures } from './report-pressures.ts';
import type { SpaceEvaluation } from './space.ts';
import { worstFact, worstOverPhases } from './worst-fact.ts';

/** How far the weather moves the air pressure to either side of its mean, Pa. Common practice, no source. */
export const WEATHER_PRESSURE = 3000;

/** The most that a quantity moves when the pressure moves with the weather and the vapour pressure stays. */
export function pressureEffect(space: SpaceEvaluation, quantity: QuantityName, { other }: ReportPressures): Computed {
  const { relation, formulas } = derivationOf(quantity);
  const worst = worstOverPhases(space.phases, 'highest', (state) => {
    if (state.vapourPressure >= state.pressure - WEATHER_PRESSURE) return undefined;
    const [less, usual, more] = [-WEATHER_PRESSURE, 0, WEATHER_PRESSURE].map((by) =>
      valueIfOk(quantityValue(quantity, { ...state, pressure: state.pressure + by }, other?.value)),
    );
    if (less === undefined || usual === undefined || more === undefined) return undefined;
    return Math.max(Math.abs(less - usual), Math.abs(more - usual));
  });
  const base = {
    relation: `the larger of |at p ± 3 kPa − at p|, at the same vapour pressure; ${relation}`,
    formulas,
    notes: ['The weather moves the air pressure by about 3 kPa to either side (common practice, no source).'],
  };
  return worstFact(base, worst, () => (other === undefined ? [] : [other.input]));
}
