/** The worst value of something over the envelope of a space, as facts give it. */

import type { AirState } from '../../physics/air/moist-air.ts';
import type { Formula, OutsideFormula } from '../../physics/formula.ts';
import { cornerOf, formulaLeftBy, formulasAt, wordsOfOutside } from '../facts/corner.ts';
import type { Computed } from '../facts/declared-fact.ts';
import type { FactInput } from '../facts/fact.ts';
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

/** How the worst value comes about, whatever it is. */
export interface WorstDerivation {
  readonly relation: string;
  readonly formulas: readonly Formula[];
  readonly notes?: readonly string[];
}

/**
 * @param inputs what went in besides the envelope
 * @param leaves which published range the computation leaves at the worst state; by default that of the state itself
 */
export function worstFact(
  { relation, formulas, notes = [] }: WorstDerivation,
  worst: WorstState | undefined,
  inputs: () => readonly FactInput[],
  leaves: (state: AirState) => OutsideFormula | undefined = formulaLeftBy,
): Computed {
  if (worst === undefined) {
    const missing = 'no state of the envelope has it';
    return { value: undefined, missing, derivation: () => ({ inputs: inputs(), relation, formulas, notes }) };
  }
  const { value, state, phase } = worst;
  const corner = () => cornerOf(state, phase.envelope.phase);
  const outside = formulas.length === 0 ? undefined : leaves(state);
  return {
    value,
    at: corner,
    outside,
    derivation: () => ({
      inputs: [...inputs(), ...phase.envelope.inputs],
      relation,
      formulas: formulasAt(formulas, corner().dewPointCelsius),
      notes: outside === undefined ? notes : [...notes, wordsOfOutside(outside)],
    }),
  };
}
