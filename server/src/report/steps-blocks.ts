/** The handover steps of a point, in the order of work, with room to sign each. */

import type { Fact } from '../evaluate/fact.ts';
import { handoverSteps } from '../evaluate/handover-plan.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { type Block, type OwnedFact, paragraph, type Text, table, told } from './document.ts';

export function stepBlocks(point: PointEvaluation): readonly Block[] {
  const steps = handoverSteps(point);
  if (steps.length === 0) return [paragraph('Too little is given for a plan.')];
  return table(
    'Steps in the order of work',
    ['step', 'what is done', 'what should be seen', 'done, by whom, when'],
    steps.map(({ title, todo, expect, facts, caution }): readonly Text[] => {
      const owned = facts.map((fact) => ownedBy(point, fact));
      return [
        [told(title)],
        [told(todo, owned), ...(caution === undefined ? [] : [' Caution: ', told(caution)])],
        [told(expect, owned)],
        ['☐'],
      ];
    }),
  );
}

/** A step at a point may name a number of its space. */
function ownedBy({ tag, facts, space }: PointEvaluation, fact: Fact): OwnedFact {
  return { subject: space === undefined || facts.has(fact.id) ? tag : space.id, fact };
}
