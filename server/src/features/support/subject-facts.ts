/** The facts of everything a file speaks of: what JSON lists and hovers choose from. */
import type { Analysis } from '../../analysis/analysis.ts';
import { highest, lowest } from '../../evaluate/air/quantity-range.ts';
import type { SpaceEvaluation } from '../../evaluate/air/space.ts';
import { factsOfPoint, factsOfSpace as ownFactsOf } from '../../evaluate/all-facts.ts';
import type { Fact } from '../../evaluate/facts/fact.ts';
import type { QuantityName } from '../../quantity/quantities.ts';

export interface SubjectFacts {
  readonly subject: string;
  readonly kind: 'space' | 'point';
  readonly facts: readonly Fact[];
}

/** What is said of every space, whatever its envelope is written in. */
const OF_A_SPACE: readonly QuantityName[] = [
  'air-temperature',
  'relative-humidity',
  'dew-point',
  'dew-point-depression',
  'mixing-ratio',
  'vapour-pressure',
];

export function factsOfSpace(space: SpaceEvaluation): readonly Fact[] {
  const ranges = OF_A_SPACE.flatMap((name) => [lowest(name), highest(name)]).flatMap(
    (end) => space.facts.get(end) ?? [],
  );
  return [...ranges, ...ownFactsOf(space)];
}

export function subjectFacts({ content }: Analysis): readonly SubjectFacts[] {
  if (content.kind !== 'site') return [];
  const { spaces, points } = content.site;
  return [
    ...[...spaces.values()].map((space) => ({ subject: space.id, kind: 'space' as const, facts: factsOfSpace(space) })),
    ...[...points.values()].map((point) => ({
      subject: point.tag,
      kind: 'point' as const,
      facts: factsOfPoint(point),
    })),
  ];
}
