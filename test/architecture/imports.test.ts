import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { type Import, importsOf, PROJECT, sourcesIn } from './source-imports.ts';

const SOURCES = 'server/src/';
const FILES = sourcesIn('server/src');

/** The table of DEVELOPERS.md: which folder may import which others, and which packages. */
function rowsOfTable(): ReadonlyMap<string, readonly string[]> {
  const guide = readFileSync(join(PROJECT, 'DEVELOPERS.md'), 'utf8');
  const rows = guide.matchAll(/^\| `server\/src\/([a-z/-]+)` \|[^|]*\| ([^|]*) \|$/gm);
  return new Map([...rows].map(([, folder = '', names = '']) => [folder, names.match(/[@\w/.-]+/g) ?? []]));
}

const ROWS = rowsOfTable();

/** The row of a file of the server: that of its folder, or of the nearest folder above that has one. */
function rowOf(file: string): string {
  const folders = [...ROWS.keys()].filter((row) => file.startsWith(`${SOURCES}${row}/`));
  return folders.toSorted((one, other) => other.length - one.length)[0] ?? '';
}

/** A row, or what else the table names: a package, a folder of the project. */
function nameOf(from: string): string {
  if (from.startsWith(SOURCES)) return rowOf(from);
  return from.startsWith('schemas/') ? 'schemas' : from;
}

function isAllowed({ file, from }: Import): boolean {
  const [row, name] = [rowOf(file), nameOf(from)];
  const allowed = ROWS.get(row) ?? [];
  return name === row || allowed.some((each) => name === each || name.startsWith(`${each}/`));
}

it('imports point the way that the table in DEVELOPERS.md says', () => {
  const wrong = FILES.flatMap(importsOf).filter((each) => !isAllowed(each));
  expect(wrong.map(({ file, from }) => `${file} imports ${from}`)).toEqual([]);
});

it('the table allows nothing that no file imports', () => {
  const used = new Set(FILES.flatMap(importsOf).map(({ file, from }) => `${rowOf(file)} imports ${nameOf(from)}`));
  const isUsed = (row: string, name: string): boolean =>
    [...used].some((each) => each === `${row} imports ${name}` || each.startsWith(`${row} imports ${name}/`));
  const idle = [...ROWS].flatMap(([row, names]) => names.flatMap((name) => (isUsed(row, name) ? [] : [[row, name]])));
  expect(idle).toEqual([]);
});

it('every folder of the server stands in the table, and the table names no other', () => {
  const rows = FILES.map((file) => rowOf(file));
  expect(FILES.filter((file) => rowOf(file) === '' && file.split('/').length > 3)).toEqual([]);
  expect([...ROWS.keys()].filter((row) => !rows.includes(row))).toEqual([]);
});

/** The rules stand side by side, one file each. */
const LONG_FOLDERS = ['server/src/rules'];

it('no folder is so long that a file is not found in it', () => {
  const counts = new Map<string, number>();
  for (const file of FILES) {
    const folder = file.slice(0, file.lastIndexOf('/'));
    counts.set(folder, (counts.get(folder) ?? 0) + 1);
  }
  expect([...counts].filter(([folder, count]) => count > 25 && !LONG_FOLDERS.includes(folder))).toEqual([]);
});
