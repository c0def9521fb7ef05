/** What a fixed value in place of the air temperature costs a report. */
import { valueIfOk } from '../base/outcome.ts';
import type { AirState } from '../physics/moist-air.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import { type QuantityName, quantityInfo } from '../quantity/quantity-names.ts';
import type { Origin } from '../syntax/nodes.ts';
import { cornerOf } from './corner.ts';
import type { Fact } from './fact.ts';
import { derivationOf, quantityValue } from './quantity-value.ts';
import { envelopeInputs, notesOf, type SpaceEvaluation, worstOverPhases } from './space.ts';

/** The largest difference between a quantity at the true air temperature and at the fixed one, same vapour pressure. */
export function fixedTemperatureError(
  space: SpaceEvaluation,
  quantity: QuantityName,
  fixedCelsius: number,
  origin: Origin | undefined,
): Fact {
  const info = quantityInfo(quantity);
  const { relation, formulas } = derivationOf(quantity);
  const worst = worstOverPhases(space, 'highest', (state) => {
    const taken: AirState = { ...state, airCelsius: fixedCelsius };
    const [reported, there] = [taken, state].map((at) => valueIfOk(quantityValue(quantity, at)));
    return reported === undefined || there === undefined ? undefined : Math.abs(reported - there);
  });
  const fixed = {
    label: 'air temperature taken',
    text: showQuantity(fixedCelsius, 'temperature'),
    ...(origin === undefined ? {} : { origin }),
  };
  const base = {
    id: `${quantity}/fixed-temperature-error`,
    title: `error of the ${info.title} from the fixed air temperature`,
    dimension: info.difference,
    relation: `|at the fixed temperature − at the air temperature|; ${relation}`,
    formulas,
  };
  if (worst === undefined)
    return { ...base, value: undefined, missing: 'no state of the envelope has it', inputs: [fixed], notes: [] };
  return {
    ...base,
    value: worst.value,
    at: cornerOf(worst.state, worst.phase.envelope.phase),
    inputs: [fixed, ...envelopeInputs(space, worst.phase)],
    notes: notesOf(worst.state),
  };
}
