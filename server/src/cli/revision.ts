/** A version of a site with its kits: the files on disk, or as they stood at a git revision, written `REV:PATH`. */
import { existsSync } from 'node:fs';
import { posix, relative, resolve, sep } from 'node:path';
import { filePath, fileUri } from '../analysis/file-location.ts';
import { Workspace } from '../analysis/workspace.ts';
import { fileKindOf } from '../model/schema.ts';
import { git } from './git.ts';
import { readText } from './load.ts';
import { CallProblem } from './problem.ts';

export interface SiteVersion {
  readonly workspace: Workspace;
  /** The URI of the site. */
  readonly file: string;
}

const DRIVE = /^[a-z]:[\\/]/i;

/** A path that is there is a path, whatever stands in it. */
export function siteVersion(word: string): SiteVersion {
  const [, revision, path] = /^([^:]+):(.+)$/s.exec(word) ?? [];
  const isPath = revision === undefined || path === undefined || DRIVE.test(word) || existsSync(word);
  const { file, read } = isPath ? { file: resolve(word), read: readText } : atRevision(revision, path);
  if (fileKindOf(file) !== 'site') throw new CallProblem(`${word}: not a file that is named *.dewsite.yaml`);
  const workspace = new Workspace();
  workspace.set(fileUri(file), read(file));
  for (const kit of workspace.kitsOf(fileUri(file))) {
    try {
      workspace.set(kit, read(filePath(kit)));
    } catch {
      // Reported at the place that names the kit.
    }
  }
  return { workspace, file: fileUri(file) };
}

interface RevisionReader {
  /** The absolute path that the site has in the work tree. */
  readonly file: string;
  read(file: string): string;
}

/** As git reads it, the path counts from the top of the repository, or from here where it starts with `./` or `../`. */
function atRevision(revision: string, path: string): RevisionReader {
  const here = process.cwd();
  const places = git(here, 'rev-parse', '--show-toplevel', '--show-prefix');
  if (places === 'not installed') throw new CallProblem('git is not installed here; compare two files instead');
  if (places === 'refused') throw new CallProblem(`${revision}:${path}: this folder is in no git repository`);
  const [top = '', prefix = ''] = places.said.split('\n');
  const commit = git(here, 'rev-parse', '--verify', '--quiet', '--end-of-options', `${revision}^{commit}`);
  if (typeof commit === 'string') throw new CallProblem(`${revision}: git knows no such revision here`);
  const inside = /^\.{1,2}\//.test(path) ? posix.join(prefix, path) : path;
  return {
    file: resolve(top, inside),
    read(file) {
      const name = relative(top, file).split(sep).join('/');
      const blob = git(here, 'cat-file', 'blob', `${commit.said.trim()}:${name}`);
      if (typeof blob === 'string') throw new CallProblem(`${name}: not in the repository at ${revision}`);
      return blob.said;
    },
  };
}
