/** What the sources import of each other, types included. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

export const PROJECT = fileURLToPath(new URL('../../', import.meta.url));

export interface Import {
  /** The importing file, from the project, with slashes: `server/src/base/words.ts`. */
  readonly file: string;
  /** A file from the project, `node`, or the name of a package. */
  readonly from: string;
}

/** The TypeScript sources below a folder of the project, from the project, with slashes. */
export function sourcesIn(folder: string): readonly string[] {
  return readdirSync(join(PROJECT, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => posix.join(folder, file.split(sep).join('/')));
}

export function importsOf(file: string): readonly Import[] {
  const text = readFileSync(join(PROJECT, file), 'utf8');
  const names = [...text.matchAll(/\b(?:from|import\() ?'([^'\s]+)'|^import '([^'\s]+)'/gm)];
  return names.map((match) => ({ file, from: targetOf(file, match[1] ?? match[2] ?? '') }));
}

function targetOf(file: string, name: string): string {
  if (!name.startsWith('.')) return name.startsWith('node:') ? 'node' : name.replace(/^(@[^/]+\/[^/]+|[^/]+).*$/, '$1');
  const path = resolve(PROJECT, dirname(file), name);
  return relative(PROJECT, path).split(sep).join('/');
}
