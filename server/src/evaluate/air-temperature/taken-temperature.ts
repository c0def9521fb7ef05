/** What it costs a report to be computed with a temperature that is not that of the air. */
import { valueIfOk } from '../../base/outcome.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { type QuantityName, quantityInfo } from '../../quantity/quantity-names.ts';
import { worstFact, worstOverPhases } from '../air/worst-fact.ts';
import type { Fact, FactInput } from '../facts/fact.ts';
import { derivationOf, quantityValue } from '../facts/quantity-value.ts';
import type { SpaceEvaluation } from '../space.ts';

export interface TakenTemperature {
  /** Last part of the fact's id. */
  readonly id: 'fixed-temperature-error' | 'heated-head-error';
  /** What follows 'error of the QUANTITY from' in the title. */
  readonly from: string;
  /** The temperature taken for that of the air, °C. */
  readonly celsiusAt: (state: AirState) => number;
  readonly input: FactInput;
}

/** The largest difference between a quantity at the temperature taken and at the air temperature, same vapour pressure. */
export function takenTemperatureError(space: SpaceEvaluation, quantity: QuantityName, taken: TakenTemperature): Fact {
  const { title, difference } = quantityInfo(quantity);
  const { relation, formulas } = derivationOf(quantity);
  const worst = worstOverPhases(space.phases, 'highest', (state) => {
    const reported = valueIfOk(quantityValue(quantity, { ...state, airCelsius: taken.celsiusAt(state) }));
    const there = valueIfOk(quantityValue(quantity, state));
    return reported === undefined || there === undefined ? undefined : Math.abs(reported - there);
  });
  const base = {
    id: `${quantity}/${taken.id}`,
    title: `error of the ${title} from ${taken.from}`,
    dimension: difference,
    relation: `|at the temperature taken − at the air temperature|; ${relation}`,
    formulas,
  };
  return worstFact(base, worst, [taken.input]);
}
