/** What a space, or one phase of it, makes of a quantity: the range from its facts, as one text. */
import { remembered } from '../../base/remembered.ts';
import { highest as highestOf, lowest as lowestOf } from '../../evaluate/air/quantity-range.ts';
import { inOnePhase, type SpaceEvaluation } from '../../evaluate/air/space.ts';
import { isKnown, type KnownFact } from '../../evaluate/facts/fact.ts';
import { showRange } from '../../quantity/format-quantity.ts';
import type { QuantityName } from '../../quantity/quantities.ts';

export interface QuantityExtremes {
  readonly lowest: KnownFact;
  readonly highest: KnownFact;
}

/** Undefined where the space cannot be computed with, or where its air does not have the quantity. */
export function extremesOf(space: SpaceEvaluation, quantity: QuantityName): QuantityExtremes | undefined {
  const [lowest, highest] = [space.facts.get(lowestOf(quantity)), space.facts.get(highestOf(quantity))];
  return isKnown(lowest) && isKnown(highest) ? { lowest, highest } : undefined;
}

export function shownRange({ lowest, highest }: QuantityExtremes): string {
  return showRange(lowest.value, highest.value, lowest.dimension);
}

/** A space seen as one of its phases alone; the one envelope `air` goes by no name. */
export function spaceInPhase(space: SpaceEvaluation, phase: string | undefined): SpaceEvaluation | undefined {
  return phasesAlone(space).get(phase);
}

const phasesAlone = remembered(
  (space: SpaceEvaluation): ReadonlyMap<string | undefined, SpaceEvaluation> =>
    new Map(space.phases.map((phase) => [phase.envelope.phase, inOnePhase(space, phase)])),
);
