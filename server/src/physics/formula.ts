/**
 * What a published formula is called, where it was published and over which range it holds, so that a derivation
 * can cite it and a state outside its range can be refused by name.
 */

import { exceeds } from '../base/rounding.ts';

/** A published formula: what a derivation cites. Its equation stands in the comment of each. */
export interface Formula {
  /** Kebab-case and unique. */
  readonly id: string;
  /** Such as 'Saturation pressure over water, IAPWS SR1-86(1992)'. */
  readonly title: string;
  /** Citation with the equation number. */
  readonly source: string;
  readonly validity: readonly ValidityRange[];
}

/** The published range of one argument, both ends included. The unit is spelled as site files spell it. */
export interface ValidityRange {
  readonly argument: string;
  readonly low: number;
  readonly high: number;
  readonly unit: string;
}

/** An argument lies outside the range that its formula was published for. */
export interface OutsideFormula {
  readonly kind: 'outside-formula';
  readonly formula: Formula;
  readonly argument: string;
  readonly value: number;
}

/**
 * The first argument that lies outside its published range, or undefined where all lie inside.
 * Arguments that the formula states no range for are not looked at; a number that is not finite lies outside.
 */
export function checkValidity(formula: Formula, values: Readonly<Record<string, number>>): OutsideFormula | undefined {
  for (const { argument, low, high } of formula.validity) {
    const value = values[argument];
    if (value === undefined) continue;
    if (Number.isNaN(value) || exceeds(value, high) || exceeds(low, value))
      return { kind: 'outside-formula', formula, argument, value };
  }
  return undefined;
}
