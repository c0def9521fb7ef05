/** The files that paths of a call mean: files as they are, folders recursively without what git ignores. */
import { type Dirent, readdirSync, readFileSync, realpathSync, type Stats, statSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import ignore, { type Ignore } from 'ignore';
import { fileKindOf } from '../model/schema.ts';
import { CallProblem } from './problem.ts';

export interface FoundFiles {
  /** Absolute paths, sorted. */
  readonly files: readonly string[];
  /** True where a folder was searched, so that what it holds is a whole. */
  readonly whole: boolean;
}

const NEVER = new Set(['.git', 'node_modules']);

export function findFiles(paths: readonly string[]): FoundFiles {
  const found = new Set<string>();
  let whole = false;
  for (const path of paths.length === 0 ? ['.'] : paths) {
    const absolute = resolve(path);
    const stat = statOf(absolute);
    if (stat === undefined) throw new CallProblem(`${path}: there is no such file or folder`);
    if (stat.isDirectory()) {
      whole = true;
      const { files, unread } = filesBelow(absolute);
      if (unread[0] !== undefined) throw new CallProblem(`${unread[0]}: the folder cannot be read`);
      for (const file of files) found.add(file);
    } else if (fileKindOf(absolute) === undefined) {
      throw new CallProblem(`${path}: not a file that is named *.dewsite.yaml, *.dewkit.yaml or *.dewvisit.yaml`);
    } else {
      found.add(absolute);
    }
  }
  return { files: [...found].sort(), whole };
}

export interface FilesBelow {
  readonly files: readonly string[];
  /** The folders that cannot be read. */
  readonly unread: readonly string[];
}

/** @param top absolute path of a folder */
export function filesBelow(top: string): FilesBelow {
  const files: string[] = [];
  const unread: string[] = [];
  const seen = new Set<string>();
  const walk = (folder: string, above: readonly IgnoreRules[]): void => {
    const read = readFolder(folder);
    if (read === undefined) {
      unread.push(folder);
      return;
    }
    if (seen.has(read.real)) return;
    seen.add(read.real);
    const rules = [...above, ...ignoreRulesOf(folder)];
    for (const entry of read.entries) {
      if (NEVER.has(entry.name)) continue;
      const path = join(folder, entry.name);
      const stat = entry.isSymbolicLink() ? statOf(path) : entry;
      if (stat === undefined || isIgnored(path, stat.isDirectory(), rules)) continue;
      if (stat.isDirectory()) walk(path, rules);
      else if (stat.isFile() && fileKindOf(path) !== undefined) files.push(path);
    }
  };
  walk(top, ignoreRulesAbove(top));
  return { files, unread };
}

/** Undefined for what is not there, such as the end of a link that leads nowhere. */
function statOf(path: string): Stats | undefined {
  try {
    return statSync(path);
  } catch {
    return undefined;
  }
}

function readFolder(folder: string): { readonly real: string; readonly entries: readonly Dirent[] } | undefined {
  try {
    return { real: realpathSync(folder), entries: readdirSync(folder, { withFileTypes: true }) };
  } catch {
    return undefined;
  }
}

interface IgnoreRules {
  readonly folder: string;
  readonly rules: Ignore;
}

function isIgnored(path: string, isFolder: boolean, all: readonly IgnoreRules[]): boolean {
  return all.some(({ folder, rules }) => {
    const name = relative(folder, path).split(sep).join('/');
    return rules.ignores(isFolder ? `${name}/` : name);
  });
}

/** The rules of the folders above, up to the top of the repository. */
function ignoreRulesAbove(folder: string): readonly IgnoreRules[] {
  const parent = resolve(folder, '..');
  if (parent === folder || statOf(join(folder, '.git')) !== undefined) return [];
  return [...ignoreRulesAbove(parent), ...ignoreRulesOf(parent)];
}

function ignoreRulesOf(folder: string): readonly IgnoreRules[] {
  try {
    return [{ folder, rules: ignore().add(readFileSync(join(folder, '.gitignore'), 'utf8')) }];
  } catch {
    return [];
  }
}
