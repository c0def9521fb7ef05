import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const PROJECT = fileURLToPath(new URL('../../', import.meta.url));
const SOURCES = join(PROJECT, 'server', 'src');

/** The table of DEVELOPERS.md: which module may import which others, and which packages. */
function allowedImports(): ReadonlyMap<string, ReadonlySet<string>> {
  const guide = readFileSync(join(PROJECT, 'DEVELOPERS.md'), 'utf8');
  const rows = guide.matchAll(/^\| `server\/src\/([a-z]+)` \|[^|]*\| ([^|]*) \|$/gm);
  return new Map([...rows].map(([, module = '', names = '']) => [module, new Set(names.match(/[@\w/.-]+/g) ?? [])]));
}

interface Import {
  readonly module: string;
  readonly file: string;
  readonly from: string;
}

function importsOfServer(): readonly Import[] {
  const files = readdirSync(SOURCES, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));
  return files.flatMap((file) => {
    const module = file.split(sep)[0] ?? '';
    const text = readFileSync(join(SOURCES, file), 'utf8');
    const named = [...text.matchAll(/\bfrom '([^']+)'|^import '([^']+)'/gm)].map((match) => match[1] ?? match[2] ?? '');
    return named.map((name) => ({ module, file, from: targetOf(file, name) }));
  });
}

/** The module that an import means, or the package. */
function targetOf(file: string, name: string): string {
  if (!name.startsWith('.')) return name.startsWith('node:') ? 'node' : name.replace(/^(@[^/]+\/[^/]+|[^/]+).*$/, '$1');
  const path = relative(PROJECT, resolve(SOURCES, file, '..', name)).split(sep);
  return path[0] === 'server' ? (path[2] ?? '') : (path[0] ?? '');
}

it('imports point the way that the table in DEVELOPERS.md says', () => {
  const allowed = allowedImports();
  const wrong = importsOfServer().filter(({ module, from }) => from !== module && !allowed.get(module)?.has(from));
  expect(wrong).toEqual([]);
});

it('every module of the server stands in the table, and the table names no other', () => {
  const modules = readdirSync(SOURCES).filter((name) => !name.includes('.'));
  expect([...allowedImports().keys()].toSorted()).toEqual(modules.toSorted());
});
