import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseDocument } from 'yaml';
import { ENTRY_KEYS, fileKindOf } from '../../server/src/model/schema.ts';
import type { ScalarNode, SyntaxNode } from '../../server/src/syntax/nodes.ts';
import { parseFile } from '../../server/src/syntax/parse-file.ts';
import { documents } from './documents.ts';
import { plainFile } from './plain-file.ts';

const PROJECT = fileURLToPath(new URL('../../', import.meta.url));

/** In flow style it is read as the author meant it, and not as YAML does. */
const DECIMAL_COMMA = /\d,\d/;

/** What the YAML library makes of the whole text, or undefined where it is not legal. */
function wholeValue(text: string): unknown {
  const document = parseDocument(text, { version: '1.2', merge: true, prettyErrors: false, logLevel: 'silent' });
  if (document.errors.length > 0) return undefined;
  try {
    return document.toJS({ maxAliasCount: -1 });
  } catch {
    return undefined; // an alias without its anchor, or inside it
  }
}

interface LegalFile {
  readonly file: string;
  readonly text: string;
  readonly whole: unknown;
}

/** The files of ours in a folder that are legal YAML and read as YAML reads them. */
function legalFiles(folder: string): readonly LegalFile[] {
  const files = readdirSync(`${PROJECT}${folder}`, { recursive: true, encoding: 'utf8' });
  return files.flatMap((name) => {
    const file = `${folder}/${name}`;
    if (fileKindOf(file) === undefined) return [];
    const text = readFileSync(`${PROJECT}${file}`, 'utf8');
    const whole = DECIMAL_COMMA.test(text) ? undefined : wholeValue(text);
    return whole === undefined ? [] : { file, text, whole };
  });
}

describe('read part by part, a file holds what it holds as a whole', () => {
  it.each([...legalFiles('samples'), ...legalFiles('test')])('$file', ({ file, text, whole }) => {
    expect(plainFile(parseFile(text, ENTRY_KEYS[fileKindOf(file) ?? 'site']))).toEqual(whole);
  });

  it('random documents of quotes, block scalars, flow over lines, comments, anchors, merges, odd indentation', () => {
    let compared = 0;
    fc.assert(
      fc.property(documents, (text) => {
        const whole = wholeValue(text);
        if (typeof whole !== 'object' || whole === null) return;
        compared++;
        expect(plainFile(parseFile(text, ENTRY_KEYS.site))).toEqual(whole);
      }),
      { numRuns: 2000 },
    );
    expect(compared).toBeGreaterThan(200);
  });
});

it('entries belong to their key by its new name once it is renamed', () => {
  const text = 'points:\n  a: {x: 1}\n  b: {x: 2}\n';
  const before = parseFile(text, ENTRY_KEYS.site);
  const { parts } = parseFile(text.replace('points', 'spaces'), ENTRY_KEYS.site, before);
  expect(parts.map(({ part }) => part.path)).toEqual([['spaces'], ['spaces', 'a'], ['spaces', 'b']]);
});

it('parts cover the text without gaps, and what a scalar says stands where it says', () => {
  fc.assert(
    fc.property(documents, (text) => {
      const { parts } = parseFile(text, ENTRY_KEYS.site);
      expect(parts.map(({ part }) => part.text).join('')).toBe(text);
      for (const { part } of parts) {
        for (const scalar of part.root === undefined ? [] : scalarsOf(part.root)) {
          const { textStart, text: said } = scalar;
          if (textStart !== undefined) expect(part.text.slice(textStart, textStart + said.length)).toBe(said);
        }
      }
    }),
    { numRuns: 1000 },
  );
});

function scalarsOf(node: SyntaxNode): readonly ScalarNode[] {
  if (node.kind === 'map') return node.pairs.flatMap(({ key, value }) => [key, ...scalarsOf(value)]);
  if (node.kind === 'list') return node.items.flatMap(scalarsOf);
  return node.kind === 'scalar' ? [node] : [];
}
