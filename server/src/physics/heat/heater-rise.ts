/** How far above the air a head's heater can hold it. */

import type { Formula } from '../formula.ts';
import { endOf } from '../mathematics/bisection.ts';

export type HeaterKind = 'constant-power' | 'resistive';

export interface ReachableRise {
  /** K above the air. */
  readonly rise: number;
  /** W/K at that rise. */
  readonly conductance: number;
  readonly limitedBy: 'power' | 'maximum-rise';
}

/** ΔT G(ΔT) = P, P = P(nominal) (V / V(nominal))² for a resistive heater */
export const REACHABLE_RISE: Formula = {
  id: 'reachable-heater-rise',
  title: 'Rise that a heater reaches: its power over the conductance of the head',
  source: 'Heat balance of the head; its conductance as cited there',
  validity: [],
};

/**
 * Power of a heater at the voltage that reaches it, W.
 *
 * Constant power: the nominal power. Resistive: P = P(nominal) · (V / V(nominal))², Joule's law at fixed resistance.
 *
 * Worked value (by hand): 4 W at 24 V, resistive, 18 V gives 2.25 W.
 *
 * @param nominalPower W
 * @param nominalVoltage at which the nominal power is given, V, above 0
 * @param voltage at the heater, V
 */
export function heaterPower(kind: HeaterKind, nominalPower: number, nominalVoltage: number, voltage: number): number {
  return kind === 'constant-power' ? nominalPower : nominalPower * (voltage / nominalVoltage) ** 2;
}

/**
 * Rise above the air, K, at which the head gives off just the heater's power.
 *
 * Solves ΔT · G(ΔT) = P by bisection between 0 and `maximumRise` to 1e-12 of it; natural convection makes the
 * conductance depend on the rise. Heat given off grows with the rise, so there is one solution. Where the power would
 * carry the head past `maximumRise`, the heater is taken to hold it there.
 *
 * Worked value (by hand): 4 W into a constant 0.2 W/K gives 20 K.
 *
 * @param power W, 0 or more
 * @param conductanceAt conductance of the head at a rise, K to W/K, above 0
 * @param maximumRise the largest rise that the model allows, K
 */
export function reachableRise(
  power: number,
  conductanceAt: (rise: number) => number,
  maximumRise: number,
): ReachableRise {
  const conductanceAtMaximum = conductanceAt(maximumRise);
  if (power >= maximumRise * conductanceAtMaximum) {
    return { rise: maximumRise, conductance: conductanceAtMaximum, limitedBy: 'maximum-rise' };
  }
  const rise = endOf((tried) => tried * conductanceAt(tried) < power, 0, maximumRise);
  return { rise, conductance: conductanceAt(rise), limitedBy: 'power' };
}
