/** What a file says can become no element, no attribute and no Markdown of its own. */
import { describe, expect, it } from 'vitest';
import { packHtml } from '../../server/src/report/html-pack.ts';
import { packMarkdown } from '../../server/src/report/markdown-pack.ts';
import { KIT, SITE } from '../features/fennmoor.ts';
import { analysisOfTexts, packOfAnalysis } from './packs.ts';
import { elementsOf, readHtml, textOf } from './read-html.ts';

const HOSTILE =
  '<script>alert(1)</script> | # [x](http://evil) `c` **b** <img src=x onerror=y> "; } body { content: "x';

const SITE_WITH_HOSTILE_WORDS = SITE.replace('title: Fennmoor Timber', `title: '${HOSTILE}'`)
  .replace('title: Kiln 2, air on the load', `title: '${HOSTILE}'`)
  .replace('title: Kiln 2, green oak', `title: '${HOSTILE}'`)
  .replace('serial: A1001', `serial: '${HOSTILE}'`)
  .replace('  K2-MT-102:', `  # accept check-plan-missing: ${HOSTILE}\n  K2-MT-102:`);

const PACK = packOfAnalysis(analysisOfTexts(SITE_WITH_HOSTILE_WORDS, KIT));

describe('hostile words in a site file', () => {
  const html = packHtml(PACK);
  const root = readHtml(html);

  it('stay words in HTML', () => {
    const names = new Set(elementsOf(root).map(({ name }) => name));
    for (const name of ['script', 'img', 'iframe', 'object', 'link', 'form']) expect(names).not.toContain(name);
    const heading = elementsOf(root).find(({ name }) => name === 'h1');
    expect(heading === undefined ? '' : textOf(heading)).toBe(`${HOSTILE}: handover pack`);
    expect(textOf(root)).toContain(`accepted with a reason: 1`);
  });

  it('end neither the style sheet nor a string in it', () => {
    const style = /<style>([\s\S]*?)<\/style>/.exec(html)?.[1] ?? '';
    const margins = style.slice(style.indexOf('@page'));
    expect(margins).not.toContain('body { content');
    expect(margins.match(/@top-left \{ content: "[^"\n]*"; /)).not.toBeNull();
  });

  it('become no markup in Markdown: cells, links, code, HTML', () => {
    const markdown = packMarkdown(PACK);
    expect(markdown).not.toMatch(/(?<!\\)<script/);
    expect(markdown).not.toMatch(/(?<!\\)\[x\]/);
    expect(markdown).not.toMatch(/(?<!\\)`/);
    expect(markdown).not.toMatch(/(?<!\\)\*\*b/);
  });
});

describe('the tables of the Markdown', () => {
  const tables = packMarkdown(PACK)
    .split('\n\n')
    .filter((block) => block.startsWith('|'))
    .map((block) => block.split('\n'));

  it('are there', () => {
    expect(tables.length).toBeGreaterThan(8);
  });

  it('have the same cells and the same width in every row', () => {
    for (const rows of tables) {
      expect(new Set(rows.map((row) => row.split(/(?<!\\)\|/).length)).size).toBe(1);
      expect(new Set(rows.map((row) => row.length)).size).toBe(1);
      expect(rows[1]).toMatch(/^\|( -{3,} \|)+$/);
    }
  });

  it('start no line with a mark of another block', () => {
    const lines = packMarkdown(PACK).split('\n');
    expect(lines.filter((line) => /^( {4,}|\t|```|~~~|=+$)/.test(line))).toEqual([]);
  });
});
