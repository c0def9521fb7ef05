/** Sites and visits that belong to single files: a visit lies beside its site or in a folder right below. */
import { type Dirent, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type FileKind, fileKindOf } from '../model/schema.ts';

/** The site files beside a visit, then those in the folder above. */
export function sitesNear(visit: string): readonly string[] {
  const folder = dirname(visit);
  return [...new Set([folder, dirname(folder)])].flatMap((near) => filesIn(near, 'site'));
}

/** The visit files beside a site and in the folders right below. */
export function visitsNear(site: string): readonly string[] {
  const folder = dirname(site);
  const below = entriesOf(folder).filter((entry) => entry.isDirectory());
  return [folder, ...below.map(({ name }) => join(folder, name))].flatMap((near) => filesIn(near, 'visit'));
}

function filesIn(folder: string, kind: FileKind): readonly string[] {
  const entries = entriesOf(folder).filter((entry) => entry.isFile() && fileKindOf(entry.name) === kind);
  return entries.map(({ name }) => join(folder, name));
}

/** None where the folder cannot be read. */
function entriesOf(folder: string): readonly Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true });
  } catch {
    return [];
  }
}
