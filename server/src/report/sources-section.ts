/** The published formulas that the numbers rest on. */

import type { SiteEvaluation } from '../analysis/site-analysis.ts';
import { factsOfPoint } from '../evaluate/all-facts.ts';
import { factsOfSpace } from '../features/support/subject-facts.ts';
import { type Section, type Text, told } from './document.ts';

export function sourcesSection({ spaces, points }: SiteEvaluation): Section {
  const facts = [...[...spaces.values()].flatMap(factsOfSpace), ...[...points.values()].flatMap(factsOfPoint)];
  const sources = new Set(facts.flatMap(({ formulas }) => formulas.map(({ source }) => source)));
  return {
    title: ['What the numbers rest on'],
    blocks: [
      {
        kind: 'paragraph',
        text: [
          'Every number was computed at the worst state of the air that the file allows, from the entries of the file and of its kits. “dewright check --format json” lists each with its inputs, its relation and its source.',
        ],
      },
      { kind: 'list', items: [...sources].sort().map((source): Text => [told(source)]) },
    ],
  };
}
