/** The files that random inputs and edits start from: every sample, fixture and corpus file, in the same order everywhere. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type FileKind, fileKindOf } from '../../server/src/model/schema.ts';

const PROJECT = process.cwd();

export interface SeedFile {
  readonly path: string;
  readonly kind: FileKind;
  readonly text: string;
}

export const SEED_FILES: readonly SeedFile[] = ['samples', 'test/rules', 'test/corpus'].flatMap((folder) =>
  readdirSync(join(PROJECT, folder), { recursive: true, encoding: 'utf8' })
    .sort()
    .flatMap((name) => {
      const kind = fileKindOf(name);
      const path = join(PROJECT, folder, name);
      return kind === undefined ? [] : [{ path, kind, text: readFileSync(path, 'utf8') }];
    }),
);
