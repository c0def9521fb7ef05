/** The voltage that reaches a load at the end of its supply cable, and the conductor that brings enough of it. */
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import type { Formula } from '../formula.ts';
import { CONDUCTORS_SOLD, type Conductor, conductorResistance } from './conductors.ts';

/** What hangs on the cable: electronics take a constant power, a resistive heater a current in proportion to voltage. */
export interface SupplyLoad {
  /** W */
  readonly constantPower: number;
  /** Of all resistive loads together, S. */
  readonly conductance: number;
}

export interface SupplyCable {
  /** One way, m. */
  readonly length: number;
  readonly celsius: number;
}

/** The load asks for more than any voltage at its end can carry through this cable. */
export interface CableCannotDeliver {
  readonly kind: 'cable-cannot-deliver';
  /** Largest constant power that the cable brings beside the resistive load, W. */
  readonly maximumPower: number;
}

/** V = {V(s) + [V(s)² - 4 (1 + R G) R P]^1/2} / {2 (1 + R G)}, R = 2 R(conductor) */
export const SUPPLY_VOLTAGE: Formula = {
  id: 'supply-voltage',
  title: 'Voltage at the end of a supply cable, with constant-power and resistive loads',
  source: "Ohm's and Kirchhoff's laws: V(s) - V = R (P/V + G V), the higher root",
  validity: [],
};

/**
 * Conductance of a resistive load, S, from its nominal power, W, and the voltage, V, that it is given at: P/V².
 * Worked value (by hand): 4 W at 24 V gives 0.00694 S.
 */
export function resistiveConductance(nominalPower: number, nominalVoltage: number): number {
  return nominalPower / nominalVoltage ** 2;
}

/** Resistance out and back, ohm: two conductors of the cable's length. 60 m of 0.5 mm² at 50 °C: 5.23 ohm. */
export function cableLoopResistance(conductor: Conductor, cable: SupplyCable): number {
  return 2 * conductorResistance(conductor, cable.length, cable.celsius);
}

/**
 * Voltage at the load, V.
 *
 * The higher root of (1 + R·G)·V² − Vs·V + R·P = 0, which is where a supply settles on switching on. There is no
 * root, and no supply that works, where P exceeds Vs²/(4·R·(1 + R·G)): then the largest such P is told.
 *
 * Worked value (by hand): 24 V, 10 ohm out and back, 8 W constant power gives 20.0 V, since 0.4 A drops 4 V.
 *
 * @param sourceVoltage V
 * @param loopResistance out and back, ohm
 */
export function voltageAtLoad(
  sourceVoltage: number,
  loopResistance: number,
  load: SupplyLoad,
): Outcome<number, CableCannotDeliver> {
  const divider = 1 + loopResistance * load.conductance;
  const discriminant = sourceVoltage ** 2 - 4 * divider * loopResistance * load.constantPower;
  if (discriminant < 0) {
    const maximumPower = sourceVoltage ** 2 / (4 * loopResistance * divider);
    return fail({ kind: 'cable-cannot-deliver', maximumPower });
  }
  return succeed((sourceVoltage + Math.sqrt(discriminant)) / (2 * divider));
}

/**
 * The smallest flexible conductor sold with which the load gets at least `requiredVoltage`; undefined where none does.
 *
 * Worked value (computed): 24 V, 60 m at 50 °C, 4.6 W, 22.5 V required: 0.5 mm², which leaves 22.95 V.
 *
 * @param sourceVoltage V
 * @param requiredVoltage V
 */
export function smallestConductorThatWorks(
  sourceVoltage: number,
  cable: SupplyCable,
  load: SupplyLoad,
  requiredVoltage: number,
): Conductor | undefined {
  const works = (conductor: Conductor): boolean => {
    const reached = voltageAtLoad(sourceVoltage, cableLoopResistance(conductor, cable), load);
    return reached.ok && reached.value >= requiredVoltage;
  };
  return CONDUCTORS_SOLD.find(works);
}
