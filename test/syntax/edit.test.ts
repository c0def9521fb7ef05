import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseDocument } from 'yaml';
import { applyEdits } from '../../server/src/base/text-range.ts';
import { type Cursor, rootCursor, TreeWalker } from '../../server/src/syntax/cursor.ts';
import {
  appendPair,
  type PartEdit,
  removePair,
  renameKey,
  replaceInScalar,
  replaceScalar,
} from '../../server/src/syntax/edit.ts';
import { appendItem, removeItem } from '../../server/src/syntax/edit-list.ts';
import { parsePart } from '../../server/src/syntax/parse-part.ts';
import { documents } from './documents.ts';

const WALKER = new TreeWalker(new Map());

/** Follows keys and positions from the root of a text that is one part. */
function at(text: string, path: readonly (string | number)[]): Cursor {
  let cursor: Cursor | undefined = rootCursor(parsePart([], text));
  for (const step of path) {
    if (cursor === undefined) break;
    cursor =
      typeof step === 'number'
        ? WALKER.items(cursor)[step]
        : WALKER.pairs(cursor).find(({ key }) => key.text === step)?.value;
  }
  if (cursor === undefined) throw new Error(`nothing at ${path.join('.')}`);
  return cursor;
}

function applied(text: string, edit: PartEdit | undefined): string | undefined {
  return edit === undefined ? undefined : applyEdits(text, [{ range: edit, newText: edit.newText }]);
}

describe('a pair is added', () => {
  it.each([
    ['below the last of a block map', 'a:\n  b: 1\nc: 2\n', ['a'], 'a:\n  b: 1\n  z: 9\nc: 2\n'],
    ['at the end of a file without a line end', 'a:\n  b: 1', ['a'], 'a:\n  b: 1\n  z: 9'],
    [
      'behind the comment of the last line',
      'a:\n  b: 1 # one\n# next\nc: 2\n',
      ['a'],
      'a:\n  b: 1 # one\n  z: 9\n# next\nc: 2\n',
    ],
    ['with the line ends of the file', 'a:\r\n  b: 1\r\nc: 2\r\n', ['a'], 'a:\r\n  b: 1\r\n  z: 9\r\nc: 2\r\n'],
    ['below nested entries', 'a:\n  b:\n    - 1\nc: 2\n', ['a'], 'a:\n  b:\n    - 1\n  z: 9\nc: 2\n'],
    ['below a block scalar', 'a:\n  b: |\n    x\nc: 2\n', ['a'], 'a:\n  b: |\n    x\n  z: 9\nc: 2\n'],
    ['to a map in a block list', 'a:\n  - b: 1\n  - c: 2\n', ['a', 0], 'a:\n  - b: 1\n    z: 9\n  - c: 2\n'],
    ['to a flow map', 'a: {b: 1}\n', ['a'], 'a: {b: 1, z: 9}\n'],
    ['to a flow map with a comma behind its last entry', 'a: {b: 1, }\n', ['a'], 'a: {b: 1, z: 9 }\n'],
    ['to a flow map over lines', 'a: {\n  b: 1, # one\n  c: 2\n}\n', ['a'], 'a: {\n  b: 1, # one\n  c: 2, z: 9\n}\n'],
    ['to an empty flow map', 'a: {}\n', ['a'], 'a: {z: 9}\n'],
    ['to a key without a value', 'a:\nb: 1\n', ['a'], 'a: {z: 9}\nb: 1\n'],
    ['to a key with nothing but a comment', 'a: # none\nb: 1\n', ['a'], 'a: {z: 9} # none\nb: 1\n'],
    ['to a key with nothing but an anchor', 'a: &x\nb: 1\n', ['a'], 'a: &x {z: 9}\nb: 1\n'],
  ])('%s', (_, text, path, expected) => {
    expect(applied(text, appendPair(at(text, path), 'z', '9'))).toBe(expected);
  });

  it('without a value where it is left to be filled in', () => {
    const text = 'a: {b: 1}\n';
    expect(applied(text, appendPair(at(text, ['a']), 'z', ''))).toBe('a: {b: 1, z:}\n');
  });
});

describe('a pair is removed', () => {
  it.each([
    ['with its line', 'a:\n  b: 1\n  c: 2\n', ['a'], 'b', 'a:\n  c: 2\n'],
    ['with the lines of its value', 'a:\n  b:\n    d: 1\n  c: 2\n', ['a'], 'b', 'a:\n  c: 2\n'],
    ['with a block scalar', 'a:\n  b: |\n    x\n\n  c: 2\n', ['a'], 'b', 'a:\n\n  c: 2\n'],
    ['at the end of a file without a line end', 'a:\n  b: 1\n  c: 2', ['a'], 'c', 'a:\n  b: 1\n'],
    ['with the line ends of the file', 'a:\r\n  b: 1\r\n  c: 2\r\n', ['a'], 'b', 'a:\r\n  c: 2\r\n'],
    [
      'with a comment below it that stands deeper',
      'a:\n  b:\n    d: 1\n    # two\n  # three\n  c: 2\n',
      ['a'],
      'b',
      'a:\n  # three\n  c: 2\n',
    ],
    ['and the comments around it stay', '# one\nb: 1\n# two\nc: 2\n', [], 'b', '# one\n# two\nc: 2\n'],
    ['from behind a dash', 'a:\n  - b: 1\n    c: 2\n', ['a', 0], 'b', 'a:\n  - c: 2\n'],
    ['as the only one behind a dash', 'a:\n  - b: 1\n', ['a', 0], 'b', 'a:\n  - {}\n'],
    ['from the front of a flow map', 'a: {b: 1, c: 2}\n', ['a'], 'b', 'a: {c: 2}\n'],
    ['from the end of a flow map', 'a: {b: 1, c: 2}\n', ['a'], 'c', 'a: {b: 1}\n'],
    ['as the only one of a flow map', 'a: {b: 1,}\n', ['a'], 'b', 'a: {}\n'],
  ])('%s', (_, text, path, key, expected) => {
    expect(applied(text, removePair(at(text, path), key))).toBe(expected);
  });
});

describe('an item', () => {
  it.each([
    ['is added to a block list', 'a:\n  - 1\nb: 2\n', 'a:\n  - 1\n  - z\nb: 2\n'],
    ['is added to a block list at the column of its key', 'a:\n- 1\nb: 2\n', 'a:\n- 1\n- z\nb: 2\n'],
    ['is added to a block list of maps', 'a:\n  - b-c: 1\n    d: 2\n', 'a:\n  - b-c: 1\n    d: 2\n  - z\n'],
    ['is added to a flow list', 'a: [1, 2]\n', 'a: [1, 2, z]\n'],
    ['is added to an empty list', 'a: []\n', 'a: [z]\n'],
    ['is added to a key without a value', 'a:\n', 'a: [z]\n'],
  ])('%s', (_, text, expected) => {
    expect(applied(text, appendItem(at(text, ['a']), 'z'))).toBe(expected);
  });

  it.each([
    ['from the front of a flow list', 'a: [1, 2]\n', 0, 'a: [2]\n'],
    ['from the end of a flow list', 'a: [1, 2]\n', 1, 'a: [1]\n'],
    ['as the only one of a flow list', 'a: [1]\n', 0, 'a: []\n'],
    ['with its line', 'a:\n  - 1\n  - &x-y 2 # two\n  - 3\n', 1, 'a:\n  - 1\n  - 3\n'],
    ['as the only one of a block list', 'a:\n  - 1\n', 0, 'a:\n  []\n'],
  ])('is removed %s', (_, text, index, expected) => {
    const start = at(text, ['a', index]).node.start;
    expect(applied(text, removeItem(at(text, ['a']), start))).toBe(expected);
  });
});

describe('a scalar is replaced', () => {
  it.each([
    ['in a block map', 'a: 1 # one\n', 'a: 9 # one\n'],
    ['with its quotes', 'a: "1"\n', 'a: 9\n'],
    ['in a flow map', 'b: {a: 1}\n', 'b: {a: 9}\n'],
    ['over several lines', 'a: |\n  x\n  y\nb: 1\n', 'a: 9\nb: 1\n'],
    ['where there was none', 'a:\nb: 1\n', 'a: 9\nb: 1\n'],
    ['where there was none in a flow map', 'b: {a:, c: 1}\n', 'b: {a: 9, c: 1}\n'],
  ])('%s', (_, text, expected) => {
    const path = text.startsWith('a') ? ['a'] : ['b', 'a'];
    expect(applied(text, replaceScalar(at(text, path), '9'))).toBe(expected);
  });

  it('in a stretch of its text', () => {
    const text = 'a: "60 C"\n';
    expect(applied(text, replaceInScalar(at(text, ['a']), 3, 4, 'degC'))).toBe('a: "60 degC"\n');
  });

  it('not behind a key without its colon', () => {
    expect(replaceScalar(at('{a, b: 1}', ['a']), '9')).toBeUndefined();
  });
});

it('a key is renamed with its quotes', () => {
  const part = parsePart([], '"a b": 1\n');
  const pair = part.root?.pairs[0];
  expect(pair && applied(part.text, renameKey(part, pair, 'c'))).toBe('c: 1\n');
});

it('a pair in a list without braces is left alone: a second one would be another item', () => {
  const pair = at('a: [b: 1, c]\n', ['a', 0]);
  expect([appendPair(pair, 'z', '9'), removePair(pair, 'b')]).toEqual([undefined, undefined]);
});

it('what is seen through an alias is left alone', () => {
  const text = 'a: &x {b: 1, c: [1]}\nd: *x\n';
  const alias = at(text, ['d']);
  const list = at(text, ['d', 'c']);
  const scalar = at(text, ['d', 'b']);
  expect([
    appendPair(alias, 'z', '9'),
    removePair(alias, 'b'),
    appendItem(list, 'z'),
    removeItem(list, list.node.start),
    replaceScalar(scalar, '9'),
    replaceInScalar(scalar, 0, 1, '9'),
  ]).toEqual([undefined, undefined, undefined, undefined, undefined, undefined]);
});

describe('in random documents an edit does what it says and changes nothing else', () => {
  /**
   * A legal text without aliases and merges, by which one map stands in two places, and without block scalars that
   * keep the blank lines below them.
   */
  const legal = documents.filter((text) => !/[*]|<<|[|][+]/.test(text) && parseDocument(text).errors.length === 0);
  const maps = legal.chain((text) => {
    const root = rootCursor(parsePart([], text));
    const found = root === undefined ? [] : mapsIn(root);
    return found.length === 0 ? fc.constant(undefined) : fc.constantFrom(...found);
  });

  it('a pair is added', () => {
    fc.assert(
      fc.property(maps, (map) => {
        const edit = map === undefined ? undefined : appendPair(map, 'zz', '9');
        if (map === undefined || edit === undefined) return;
        const after = applied(map.part.text, edit) ?? '';
        expect(plainText(after)).toEqual(changed(map, (pairs) => [...pairs, ['zz', 9]]));
      }),
      { numRuns: 1000 },
    );
  });

  it('a pair is removed', () => {
    fc.assert(
      fc.property(maps, fc.nat(), (map, pick) => {
        const names = map?.node.kind === 'map' ? map.node.pairs.map(({ key }) => key.text) : [];
        const name = names[pick % Math.max(1, names.length)];
        const edit = map === undefined || name === undefined ? undefined : removePair(map, name);
        if (map === undefined || edit === undefined) return;
        const after = applied(map.part.text, edit) ?? '';
        expect(plainText(after)).toEqual(changed(map, (pairs) => pairs.filter(([key]) => key !== name)));
      }),
      { numRuns: 1000 },
    );
  });
});

function mapsIn(cursor: Cursor): readonly Cursor[] {
  if (cursor.node.kind === 'list') return WALKER.items(cursor).flatMap(mapsIn);
  if (cursor.node.kind !== 'map') return [];
  return [cursor, ...WALKER.pairs(cursor).flatMap(({ value }) => mapsIn(value))];
}

type Pairs = readonly (readonly [string, unknown])[];

/** The plain value of the whole text with one of its maps changed; an emptied map of lines is no value at all. */
function changed(map: Cursor, change: (pairs: Pairs) => Pairs): unknown {
  const plain = (cursor: Cursor): unknown => {
    const { node } = cursor;
    if (node.kind === 'scalar') return node.value;
    if (node.kind === 'list') return WALKER.items(cursor).map(plain);
    const pairs: Pairs = WALKER.pairs(cursor).map(({ key, value }) => [key.text, plain(value)] as const);
    const wanted = node === map.node ? change(pairs) : pairs;
    return wanted.length === 0 && !node.flow ? null : Object.fromEntries(wanted);
  };
  const root = rootCursor(map.part);
  return root === undefined ? null : plain(root);
}

function plainText(text: string): unknown {
  const document = parseDocument(text);
  expect(document.errors).toEqual([]);
  return document.toJS();
}
