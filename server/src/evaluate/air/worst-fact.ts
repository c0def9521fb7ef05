/** Facts that are the worst value of something over the envelope of a space. */

import type { AirState } from '../../physics/air/moist-air.ts';
import type { OutsideFormula } from '../../physics/formula.ts';
import { cornerOf, formulaLeftBy, formulasAt, wordsOfOutside } from '../facts/corner.ts';
import type { Fact, FactInput } from '../facts/fact.ts';
import { extremeOf } from './extreme.ts';
import type { PhaseEvaluation } from './phase.ts';

export interface WorstState {
  readonly value: number;
  readonly state: AirState;
  readonly phase: PhaseEvaluation;
}

/** The highest or lowest value of a function over all phases, with the phase and the state. */
export function worstOverPhases(
  phases: readonly PhaseEvaluation[],
  direction: 'highest' | 'lowest',
  valueAt: (state: AirState) => number | undefined,
): WorstState | undefined {
  let worst: WorstState | undefined;
  for (const phase of phases) {
    const found = phase.sampled === undefined ? undefined : extremeOf(phase.sampled, direction, valueAt);
    if (found === undefined) continue;
    const better =
      worst === undefined || (direction === 'highest' ? found.value > worst.value : found.value < worst.value);
    if (better) worst = { phase, ...found };
  }
  return worst;
}

/** What a fact says of itself before its value is known. */
export type FactBase = Pick<Fact, 'id' | 'title' | 'dimension' | 'formulas'> & {
  readonly relation: string;
  readonly notes?: readonly string[];
};

/**
 * @param inputs what went in besides the envelope
 * @param leaves which published range the computation leaves at the worst state; by default that of the state itself
 */
export function worstFact(
  base: FactBase,
  worst: WorstState | undefined,
  inputs: readonly FactInput[],
  leaves: (state: AirState) => OutsideFormula | undefined = formulaLeftBy,
): Fact {
  const { id, title, dimension, relation, notes = [] } = base;
  if (worst === undefined) {
    const missing = 'no state of the envelope has it';
    return { value: undefined, missing, inputs, notes, id, title, dimension, relation, formulas: base.formulas };
  }
  const { value, state, phase } = worst;
  const at = cornerOf(state, phase.envelope.phase);
  const common = { id, title, dimension, relation, formulas: formulasAt(base.formulas, at.dewPointCelsius) };
  const allInputs = [...inputs, ...phase.envelope.inputs];
  const outside = base.formulas.length === 0 ? undefined : leaves(state);
  if (outside === undefined) return { value, at, inputs: allInputs, notes, ...common };
  return { value, at, inputs: allInputs, notes: [...notes, wordsOfOutside(outside)], outside, ...common };
}
