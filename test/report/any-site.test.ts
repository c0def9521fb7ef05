/** A pack can be made of any site, however much is wrong with it or still to be written. */
import { describe, expect, it } from 'vitest';
import { packHtml } from '../../server/src/report/html-pack.ts';
import { packMarkdown } from '../../server/src/report/markdown-pack.ts';
import { analyseCorpusFile, corpusFiles } from '../corpus/corpus-files.ts';
import { KIT, SITE } from '../features/fennmoor.ts';
import { analysisOfTexts, packOfAnalysis } from './packs.ts';
import { elementsOf, readHtml } from './read-html.ts';

describe('the corpus', () => {
  it.each(['sound', 'faulty'] as const)('every %s site has a pack', (part) => {
    for (const file of corpusFiles(part)) {
      const pack = packOfAnalysis(analyseCorpusFile(part, file));
      expect(elementsOf(readHtml(packHtml(pack))).length).toBeGreaterThan(20);
      expect(packMarkdown(pack)).not.toContain('undefined');
    }
  });
});

it('a site that is being written has a pack wherever its text ends', () => {
  const lines = SITE.split('\n');
  for (let count = 0; count <= lines.length; count++) {
    const html = packHtml(packOfAnalysis(analysisOfTexts(lines.slice(0, count).join('\n'), KIT)));
    expect(html).not.toMatch(/undefined|NaN|Infinity/);
    readHtml(html);
  }
});
