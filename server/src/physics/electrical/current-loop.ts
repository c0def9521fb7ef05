/** The 4–20 mA current loop: its load line, and what its levels mean by NAMUR NE 43. */
import type { Formula } from '../formula.ts';

/** What a current on the loop says. The gaps between the bands of NE 43 say nothing for certain. */
export type LoopLevel = 'failure-low' | 'undefined-low' | 'measuring' | 'undefined-high' | 'failure-high';

/** Levels of NAMUR NE 43, A. */
export const NE43_FAILURE_LOW = 3.6e-3;
const NE43_LOWEST_MEASURING = 3.8e-3;
const NE43_HIGHEST_MEASURING = 20.5e-3;
export const NE43_FAILURE_HIGH = 21e-3;

/** Current, A, that a loop must be able to carry: the failure level of 21 mA and a little more. Common practice. */
const COMPLIANCE_CURRENT = 22e-3;

/** Guards the comparison with a level against the last digit of a conversion from mA. */
const CURRENT_ROUNDING = 1e-9;

/** R(max) = (V(supply) - V(min)) / I, I = 22 mA */
export const LOOP_LOAD_LINE: Formula = {
  id: 'loop-load-line',
  title: 'Load line of a current loop',
  source: "Kirchhoff's voltage law around the loop; failure level 21 mA, NAMUR NE 43",
  validity: [],
};

/** measuring 3.8 to 20.5 mA, failure up to 3.6 mA or from 21 mA */
export const LOOP_LEVELS: Formula = {
  id: 'loop-levels',
  title: 'Meaning of the current on a loop',
  source: 'NAMUR NE 43',
  validity: [],
};

/**
 * Largest load, ohm, cable included, through which a loop still carries 22 mA; 0 where the supply is too low.
 *
 * R = (Vsupply − Vmin)/I; see `LOOP_LOAD_LINE`.
 *
 * Worked value (by hand): 24 V supply, 12 V for the transmitter gives 545 ohm.
 *
 * @param supplyVoltage V
 * @param minimumVoltage that the transmitter keeps for itself, V
 */
export function maximumLoopLoad(supplyVoltage: number, minimumVoltage: number): number {
  return Math.max(0, (supplyVoltage - minimumVoltage) / COMPLIANCE_CURRENT);
}

/**
 * Voltage left for the transmitter, V, while the loop carries 22 mA; negative where the loop cannot carry it.
 *
 * Worked value (by hand): 24 V supply, 250 ohm leaves 18.5 V.
 *
 * @param supplyVoltage V
 * @param load receiver and cable, ohm
 */
export function voltageLeftOnLoop(supplyVoltage: number, load: number): number {
  return supplyVoltage - load * COMPLIANCE_CURRENT;
}

/**
 * What a current means by NAMUR NE 43.
 *
 * Worked value (NAMUR NE 43): 21 mA is a failure, 20.5 mA the end of the measuring range.
 *
 * @param current A
 */
export function loopLevelOf(current: number): LoopLevel {
  if (current <= NE43_FAILURE_LOW + CURRENT_ROUNDING) return 'failure-low';
  if (current < NE43_LOWEST_MEASURING - CURRENT_ROUNDING) return 'undefined-low';
  if (current <= NE43_HIGHEST_MEASURING + CURRENT_ROUNDING) return 'measuring';
  if (current < NE43_FAILURE_HIGH - CURRENT_ROUNDING) return 'undefined-high';
  return 'failure-high';
}
