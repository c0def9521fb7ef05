/** The plan of a point's checks: the next one and what it compares with. */

import type { Fact } from '../facts/fact.ts';
import type { ResolvedPoint } from '../point.ts';
import type { SpaceEvaluation } from '../space.ts';
import { type CheckDue, checkDue } from './due.ts';
import { saltFacts } from './salt-facts.ts';
import { type SaltPlan, saltPlan } from './salts.ts';

export interface CheckPlan {
  readonly due: CheckDue | undefined;
  readonly salts: SaltPlan | undefined;
}

/** @param space where its envelopes can be computed with */
export function checkPlan(resolved: ResolvedPoint, space: SpaceEvaluation | undefined): CheckPlan {
  return { due: checkDue(resolved), salts: space === undefined ? undefined : saltPlan(resolved, space) };
}

export function checkFacts({ due, salts }: CheckPlan, resolved: ResolvedPoint): readonly Fact[] {
  return [...(due === undefined ? [] : [due.fact]), ...(salts === undefined ? [] : saltFacts(salts, resolved))];
}
