/** Any quantity of humid air from a state of air, by its name. */
import { fail, type Outcome } from '../../base/outcome.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { dewPointAt } from '../../physics/air/quantities.ts';
import { type NoSuchQuantity, quantityOf } from '../../physics/air/state-quantities.ts';
import { type QuantityInfo, type QuantityName, quantityInfo } from '../../quantity/quantities.ts';

export type NoSuchValue = NoSuchQuantity | { readonly kind: 'other-pressure-missing' };

/**
 * @param otherPressure for `dew-point-at`: the pressure in Pa that the gas is brought to
 * @returns the quantity in its canonical unit, or why the air has none
 */
export function quantityValue(
  name: QuantityName,
  state: AirState,
  otherPressure?: number,
): Outcome<number, NoSuchValue> {
  if (name !== 'dew-point-at') return quantityOf(state, name);
  return otherPressure === undefined ? fail({ kind: 'other-pressure-missing' }) : dewPointAt(state, otherPressure);
}

/** What a quantity is computed by. */
export function derivationOf(name: QuantityName): Pick<QuantityInfo, 'relation' | 'formulas'> {
  const { relation, formulas } = quantityInfo(name);
  return { relation, formulas };
}
