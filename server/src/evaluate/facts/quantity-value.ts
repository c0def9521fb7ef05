/** Any quantity of humid air from a state of air, by its name, with the formulas that it rests on. */
import { fail, type Outcome } from '../../base/outcome.ts';
import { ENHANCEMENT_OVER_ICE, ENHANCEMENT_OVER_WATER } from '../../physics/air/enhancement.ts';
import { type AirState, IDEAL_MIXTURE_ENTHALPY } from '../../physics/air/moist-air.ts';
import { dewPointAt } from '../../physics/air/quantities.ts';
import { type NoSuchQuantity, quantityOf } from '../../physics/air/quantity-of-state.ts';
import { SATURATION_OVER_ICE, SATURATION_OVER_WATER } from '../../physics/air/saturation.ts';
import { WET_BULB } from '../../physics/air/wet-bulb.ts';
import type { Formula } from '../../physics/formula.ts';
import type { QuantityName } from '../../quantity/quantity-names.ts';

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

const OVER_WATER = [SATURATION_OVER_WATER, ENHANCEMENT_OVER_WATER];
const OVER_ICE = [SATURATION_OVER_ICE, ENHANCEMENT_OVER_ICE];

export interface Derivation {
  readonly relation: string;
  readonly formulas: readonly Formula[];
}

/** e is the vapour pressure, p the pressure, t the air temperature, f the enhancement factor, ε = Mv/Ma = 0.62196. */
const DERIVATIONS: Readonly<Record<QuantityName, Derivation>> = {
  'relative-humidity': { relation: 'RH = e / (f(t, p) · ew(t))', formulas: OVER_WATER },
  'relative-humidity-ice': { relation: 'RHi = e / (f(t, p) · ei(t))', formulas: OVER_ICE },
  'air-temperature': { relation: 't, as the envelope gives it', formulas: [] },
  'dew-point': { relation: 'f(td, p) · ew(td) = e, solved for td', formulas: OVER_WATER },
  'frost-point': { relation: 'f(tf, p) · ei(tf) = e, solved for tf', formulas: OVER_ICE },
  'dew-point-at': { relation: 'f(td, p2) · ew(td) = e · p2 / p, solved for td', formulas: OVER_WATER },
  'vapour-pressure': { relation: 'e = RH · f(t, p) · ew(t)', formulas: OVER_WATER },
  'mixing-ratio': { relation: 'w = ε · e / (p − e)', formulas: OVER_WATER },
  'specific-humidity': { relation: 'q = ε · e / (p − (1 − ε) · e)', formulas: OVER_WATER },
  'volume-fraction': { relation: 'x = e / p', formulas: OVER_WATER },
  'absolute-humidity': { relation: 'ρv = e / (Rv · T)', formulas: OVER_WATER },
  'wet-bulb': {
    relation: 'adiabatic saturation, solved for the wet-bulb temperature',
    formulas: [WET_BULB, ...OVER_WATER],
  },
  'specific-enthalpy': {
    relation: 'h = cpa · t + w · (h0 + cpv · t)',
    formulas: [IDEAL_MIXTURE_ENTHALPY, ...OVER_WATER],
  },
  'vapour-pressure-deficit': { relation: 'f(t, p) · ew(t) − e', formulas: OVER_WATER },
  'dew-point-depression': { relation: 't − td', formulas: OVER_WATER },
};

export function derivationOf(name: QuantityName): Derivation {
  return DERIVATIONS[name];
}
