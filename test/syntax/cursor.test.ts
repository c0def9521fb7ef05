import { describe, expect, it } from 'vitest';
import { type Cursor, foreignAnchorsOf, originOf, rootCursor, TreeWalker } from '../../server/src/syntax/cursor.ts';
import { parseFile } from '../../server/src/syntax/parse-file.ts';
import { plainValueOf } from '../../server/src/syntax/plain-value.ts';
import { plainFile } from './plain-file.ts';

const ENTRIES = new Set(['spaces', 'points']);

describe('aliases', () => {
  it('stand for the anchor last given above them, in the same entry or an earlier one', () => {
    const text = [
      'spaces:',
      '  one: {air: &air {t: 1}}',
      '  two: {air: *air, other: &air {t: 2}, again: *air}',
      '  three: {air: *air}',
    ].join('\n');
    expect(plainFile(parseFile(text, ENTRIES))).toEqual({
      spaces: {
        one: { air: { t: 1 } },
        two: { air: { t: 1 }, other: { t: 2 }, again: { t: 2 } },
        three: { air: { t: 2 } },
      },
    });
  });

  it('are where a finding points, with the anchor as the place it is defined at', () => {
    const text = 'spaces:\n  one: {air: &air {t: 1}}\n  two: {air: *air}\n';
    const tree = parseFile(text, ENTRIES);
    const walker = new TreeWalker(foreignAnchorsOf(tree));
    const last = tree.parts.at(-1);
    const root = last === undefined ? undefined : rootCursor(last.part);
    let cursor: Cursor | undefined = root;
    for (const key of ['two', 'air', 't']) {
      cursor = cursor && walker.pairs(cursor).find((pair) => pair.key.text === key)?.value;
    }
    const origin = cursor && originOf(cursor);
    const shown = (at: typeof origin): string | undefined => at?.part.text.slice(at.start, at.end);
    expect([shown(origin), shown(origin?.definedAt)]).toEqual(['*air', '1']);
  });
});

describe('merge keys', () => {
  it.each([
    ['own keys win', 'a: &a {x: 1, y: 1}\nb: {y: 2, <<: *a}\n', { x: 1, y: 2 }],
    ['of two, the first wins', 'a: &a {x: 1}\nc: &c {x: 2, z: 3}\nb: {<<: [*a, *c]}\n', { x: 1, z: 3 }],
    ['through several levels', 'a: &a {x: 1}\nc: &c {<<: *a, y: 2}\nb: {<<: *c, z: 3}\n', { x: 1, y: 2, z: 3 }],
    ['in quotes it is a key', 'b: {"<<": 1}\n', { '<<': 1 }],
  ])('%s', (_, text, expected) => {
    expect(plainFile(parseFile(text, ENTRIES))).toHaveProperty('b', expected);
  });

  it('at the top level or among entries give way to what other lines say', () => {
    const text = 'base: &base {one: {t: 1}, two: {t: 1}}\nspaces:\n  <<: *base\n  two: {t: 2}\n';
    expect(plainFile(parseFile(text, ENTRIES))).toHaveProperty('spaces', { one: { t: 1 }, two: { t: 2 } });
  });
});

describe('an alias bomb', () => {
  it('of lists is too large to be unfolded', () => {
    const level = (depth: number): string => `a${depth}: &a${depth} [${`*a${depth - 1}, `.repeat(10)}]`;
    const text = ['a0: &a0 [x]', ...Array.from({ length: 9 }, (_, index) => level(index + 1))].join('\n');
    expect(unfolded(text, 'a9')).toBeUndefined();
  });

  it('of merge keys is what it says: the same keys over and over', () => {
    const level = (depth: number): string => `a${depth}: &a${depth} {<<: [${`*a${depth - 1}, `.repeat(10)}]}`;
    const text = ['a0: &a0 {x: 1}', ...Array.from({ length: 30 }, (_, index) => level(index + 1))].join('\n');
    expect(unfolded(text, 'a30')).toEqual({ x: 1 });
  });

  it('of nesting is too deep to be unfolded, in whatever order it is met', () => {
    const nested = (depth: number): string => `a${depth}: &a${depth} ${'['.repeat(50)}*a${depth - 1}${']'.repeat(50)}`;
    const aliases = Array.from({ length: 401 }, (_, depth) => `*a${depth}`).join(', ');
    const lines = Array.from({ length: 400 }, (_, index) => nested(index + 1));
    const text = ['a0: &a0 x', ...lines, `all: [${aliases}]`].join('\n');
    expect(unfolded(text, 'a400')).toBeUndefined();
    expect(unfolded(text, 'all')).toBeUndefined();
    expect(unfolded(text, 'a1')).toBeDefined();
  });
});

function unfolded(text: string, key: string): unknown {
  const tree = parseFile(text, ENTRIES);
  const walker = new TreeWalker(foreignAnchorsOf(tree));
  for (const { part } of tree.parts) {
    const root = rootCursor(part);
    const pair = root && walker.pairs(root).find((candidate) => candidate.key.text === key);
    if (pair !== undefined) return plainValueOf(pair.value, walker);
  }
  throw new Error(`no key ${key}`);
}
