/** The conductor of a supply cable that brings enough voltage. */

import { isKnown, showFact } from '../../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import { conductorNeeded } from '../../evaluate/supply/facts.ts';
import { writeQuantity } from '../../quantity/format-quantity.ts';
import { replaceScalar } from '../../syntax/edit.ts';
import type { FixDraft, Related } from '../rule.ts';

/** `Use 1.5 mm² conductors.`, or what else to do where none brings enough. */
export function conductorWords({ facts, point }: PointEvaluation): string {
  const needed = facts.get(conductorNeeded);
  if (isKnown(needed)) return `Use conductors of ${showFact(needed)}.`;
  return point.supply?.value.cable === undefined
    ? 'Raise the supply voltage.'
    : 'No conductor sold brings enough: raise the supply voltage or shorten the cable.';
}

export function useConductor({ facts, point }: PointEvaluation): readonly FixDraft[] {
  const needed = facts.get(conductorNeeded);
  const conductor = point.supply?.value.cable?.value.conductor;
  if (!isKnown(needed) || conductor === undefined) return [];
  const edits = [replaceScalar(conductor.cursor, writeQuantity(needed.value, needed.dimension))];
  return [{ title: `Use conductors of ${showFact(needed)}: the cable must be pulled anew`, kind: 'choice', edits }];
}

export function cableIs({ point }: PointEvaluation): readonly Related[] {
  const cable = point.supply?.value.cable;
  return cable === undefined ? [] : [{ message: 'The cable is here.', origin: cable.keyOrigin ?? cable.origin }];
}
