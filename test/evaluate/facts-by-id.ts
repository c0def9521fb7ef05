/** The facts of a point or a space by their ids, as JSON lists them: what a test names by the words that a user sees. */
import type { SpaceEvaluation } from '../../server/src/evaluate/air/space.ts';
import { factsOfPoint, factsOfSpace } from '../../server/src/evaluate/all-facts.ts';
import type { Fact } from '../../server/src/evaluate/facts/fact.ts';
import type { ResolvedPoint } from '../../server/src/evaluate/resolved/resolved-point.ts';

export type FactsById = ReadonlyMap<string, Fact>;

export function factsById(subject: ResolvedPoint | SpaceEvaluation | undefined): FactsById {
  if (subject === undefined) return new Map();
  const facts = 'tag' in subject ? factsOfPoint(subject) : factsOfSpace(subject);
  return new Map(facts.map((fact) => [fact.id, fact]));
}
