/** What a space, or one phase of it, makes of a quantity: the range from its facts, as one text. */
import { remembered } from '../../base/remembered.ts';
import { isKnown, type KnownFact } from '../../evaluate/facts/fact.ts';
import { quantityExtreme, type SpaceEvaluation } from '../../evaluate/space.ts';
import { showRange } from '../../quantity/format-quantity.ts';
import type { QuantityName } from '../../quantity/quantity-names.ts';

export interface QuantityExtremes {
  readonly lowest: KnownFact;
  readonly highest: KnownFact;
}

/** Undefined where the space cannot be computed with, or where its air does not have the quantity. */
export function extremesOf(space: SpaceEvaluation, quantity: QuantityName): QuantityExtremes | undefined {
  if (!space.complete) return undefined;
  const [lowest, highest] = [quantityExtreme(space, quantity, 'lowest'), quantityExtreme(space, quantity, 'highest')];
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
    new Map(
      space.phases.map((phase) => {
        const complete = phase.sampled !== undefined;
        return [phase.envelope.phase, { ...space, phases: [phase], complete, quantityFacts: new Map() }];
      }),
    ),
);
