/** The highest or lowest pressure of a space as a fact. */
import type { KnownFact } from '../facts/fact.ts';
import type { SpaceEvaluation } from '../space.ts';

export function pressureExtreme({ pressure }: SpaceEvaluation, direction: 'highest' | 'lowest'): KnownFact {
  return {
    id: `pressure/${direction}`,
    title: `${direction} pressure`,
    dimension: 'pressure',
    value: direction === 'highest' ? pressure.high : pressure.low,
    inputs: [pressure.input],
    formulas: [],
    notes: [],
  };
}
