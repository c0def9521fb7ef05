import { expect, it } from 'vitest';
import { CAUTIONS } from '../../server/src/evaluate/cautions.ts';
import { packMarkdown } from '../../server/src/report/markdown-pack.ts';
import { KIT, SITE } from '../features/fennmoor.ts';
import { analysisOfTexts, packOfAnalysis } from './packs.ts';

function markdownOf(...edit: readonly [from: string, to: string]): string {
  expect(SITE).toContain(edit[0]);
  return packMarkdown(packOfAnalysis(analysisOfTexts(SITE.replace(...edit), KIT)));
}

it('a gauge pressure is told from an absolute one', () => {
  expect(markdownOf('pressure: 99 kPa', 'pressure: 120 kPa(g)')).toMatch(/Pressure +\| 120 kPa above the air outside/);
  expect(markdownOf('pressure: 99 kPa', 'pressure: 120 kPa')).toMatch(/Pressure +\| 120 kPa +\|/);
});

it('a caution stands in full at the first step of each point that needs it, and is named at the others', () => {
  const markdown = markdownOf('    exposure:', '    hazards: [hot-surface]\n    exposure:');
  const sections = markdown.split('\n## ').filter((section) => section.startsWith('Point'));
  expect(sections.map((section) => section.split(CAUTIONS['hot-surface']).length - 1)).toEqual([1, 1]);
  // The second point has no step but the first that touches the hazard.
  expect(sections.map((section) => section.includes('The caution above holds here too.'))).toEqual([true, false]);
});
