/** The facts of a space are declared with these. */
import type { Dimension } from '../../quantity/dimension.ts';
import type { QuantityName } from '../../quantity/quantities.ts';
import {
  declaredFact,
  type FactDeclaration,
  type FactFamily,
  type FactKey,
  type FamilyDeclaration,
  factFamily,
  namedFamily,
} from '../facts/declared-fact.ts';
import type { SpaceEvaluation } from './space.ts';

export type SpaceFact<Of extends Dimension = Dimension> = FactKey<SpaceEvaluation, Of>;

export function spaceFact<Of extends Dimension>(
  id: string,
  declaration: FactDeclaration<SpaceEvaluation, Of>,
): SpaceFact<Of> {
  return declaredFact(id, declaration);
}

/** `QUANTITY/NAME`: what the envelopes make of each quantity. */
export function quantityFact<Of extends Dimension>(
  name: string,
  declaration: FamilyDeclaration<SpaceEvaluation, QuantityName, Of>,
): FactFamily<SpaceEvaluation, QuantityName, Of> {
  return namedFamily((quantity) => `${quantity}/${name}`, `QUANTITY/${name}`, declaration);
}

/** `envelope/PHASE/NAME`, or `envelope/NAME` for the one envelope of a space without phases. */
export function phaseFact<Of extends Dimension>(
  name: string,
  declaration: FamilyDeclaration<SpaceEvaluation, string | undefined, Of>,
): FactFamily<SpaceEvaluation, string | undefined, Of> {
  const idOf = (phase: string | undefined): string =>
    phase === undefined ? `envelope/${name}` : `envelope/${phase}/${name}`;
  return factFamily(idOf, `envelope/PHASE/${name}`, declaration);
}
