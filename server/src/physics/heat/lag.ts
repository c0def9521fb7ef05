/** How far a probe trails a changing air temperature, as a first-order lag. */

import type { AirProperties } from '../air/air-properties.ts';
import type { Formula } from '../formula.ts';
import { type AirCylinder, filmCoefficient } from './head-conductance.ts';

/** Data sheets give the response at 1 m/s. */
const RESPONSE_SPEED = 1;

/** Difference, K, of a probe that trails its air: drives what natural convection there is in still air. */
const TRAILING_DIFFERENCE = 1;

/** T(air) - T(probe) = r τ, once the ramp has run for long: until then r τ (1 - exp(-t/τ)) */
export const RAMP_LAG: Formula = {
  id: 'ramp-lag',
  title: 'Lag of a first-order probe behind a ramp',
  source: 'First-order response to a ramp; Incropera, section 5.1 (lumped capacitance)',
  validity: [],
};

/** τ(v) = τ(1 m/s) h(1 m/s) / h(v) */
export const RESPONSE_WITH_SPEED: Formula = {
  id: 'response-with-speed',
  title: 'Response of a probe at another air speed',
  source: 'Lumped capacitance (Incropera, section 5.1), film coefficient after Churchill and Bernstein 1977',
  validity: [{ argument: 'reynolds-times-prandtl', low: 0.2, high: 1e7, unit: '' }],
};

/**
 * How far a probe trails a ramp that has run for long, in the ramp's unit; negative on a falling ramp.
 *
 * r·τ; see `RAMP_LAG`. First order: a probe with a filter has more than one time constant, and its data-sheet response
 * stands for all.
 *
 * Worked value (by hand): 0.5 K/min and 20 s gives 0.167 K.
 *
 * @param rate of the ramp per second, such as K/s
 * @param timeConstant s, above 0
 */
export function rampLag(rate: number, timeConstant: number): number {
  return rate * timeConstant;
}

/**
 * How far apart two probes read on one ramp because they respond differently: the second minus the first.
 *
 * The slower one trails more, and what is computed from the pair is wrong by that difference, on top of the lag that
 * both share. It is largest once the ramp has run for long, as here.
 *
 * Worked value (by hand): 0.5 K/min, 15 s and 45 s: the second reads 0.25 K lower.
 *
 * @param rate per second
 * @param firstTimeConstant s
 * @param secondTimeConstant s
 */
export function rampDifference(rate: number, firstTimeConstant: number, secondTimeConstant: number): number {
  return rampLag(rate, firstTimeConstant) - rampLag(rate, secondTimeConstant);
}

/**
 * Time constant of a probe at an air speed, s, from the one given at 1 m/s.
 *
 * See `RESPONSE_WITH_SPEED`. Holds for the thermal part of the response; in still air natural convection at 1 K of
 * difference bounds it. What a filter adds by diffusion does not change with speed, so that this is the slow side
 * below 1 m/s and the fast side above.
 *
 * Worked value (computed): 6 mm stem, 20 s at 1 m/s, air of 60 °C: 36 s at 0.3 m/s, 12 s at 3 m/s.
 *
 * @param timeConstantAtOneMetrePerSecond s
 * @param probe the cylinder that takes up the heat
 * @param speed m/s, 0 or more
 * @param air at the air temperature
 */
export function timeConstantAtSpeed(
  timeConstantAtOneMetrePerSecond: number,
  probe: AirCylinder,
  speed: number,
  air: AirProperties,
): number {
  const filmAt = (v: number): number => filmCoefficient(probe, v, TRAILING_DIFFERENCE, air);
  return (timeConstantAtOneMetrePerSecond * filmAt(RESPONSE_SPEED)) / filmAt(speed);
}
