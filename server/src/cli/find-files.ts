/** The files that paths of a call mean: files as they are, folders recursively without what git ignores. */
import { type Dirent, readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
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

interface IgnoreRules {
  readonly folder: string;
  readonly rules: Ignore;
}

export function findFiles(paths: readonly string[]): FoundFiles {
  const found = new Set<string>();
  let whole = false;
  for (const path of paths.length === 0 ? ['.'] : paths) {
    const absolute = resolve(path);
    const stat = statSync(absolute, { throwIfNoEntry: false });
    if (stat === undefined) throw new CallProblem(`${path}: there is no such file or folder`);
    if (stat.isDirectory()) {
      whole = true;
      walk(absolute, ignoreRulesAbove(absolute), new Set(), found);
    } else if (fileKindOf(absolute) === undefined) {
      throw new CallProblem(`${path}: not a file that is named *.dewsite.yaml, *.dewkit.yaml or *.dewvisit.yaml`);
    } else {
      found.add(absolute);
    }
  }
  return { files: [...found].sort(), whole };
}

function walk(folder: string, rules: readonly IgnoreRules[], seen: Set<string>, found: Set<string>): void {
  const real = realpathSync(folder);
  if (seen.has(real)) return;
  seen.add(real);
  const own = ignoreRulesOf(folder);
  const all = own === undefined ? rules : [...rules, own];
  for (const entry of entriesOf(folder)) {
    if (NEVER.has(entry.name)) continue;
    const path = join(folder, entry.name);
    const stat = entry.isSymbolicLink() ? statSync(path, { throwIfNoEntry: false }) : entry;
    if (stat === undefined || isIgnored(path, stat.isDirectory(), all)) continue;
    if (stat.isDirectory()) walk(path, all, seen, found);
    else if (stat.isFile() && fileKindOf(path) !== undefined) found.add(path);
  }
}

function entriesOf(folder: string): readonly Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true });
  } catch {
    throw new CallProblem(`${folder}: the folder cannot be read`);
  }
}

function isIgnored(path: string, isFolder: boolean, all: readonly IgnoreRules[]): boolean {
  return all.some(({ folder, rules }) => {
    const name = relative(folder, path).split(sep).join('/');
    return rules.ignores(isFolder ? `${name}/` : name);
  });
}

/** The rules of the folders above, up to the top of the repository. */
function ignoreRulesAbove(folder: string): readonly IgnoreRules[] {
  const above: IgnoreRules[] = [];
  for (let at = folder; ; at = resolve(at, '..')) {
    if (statSync(join(at, '.git'), { throwIfNoEntry: false }) !== undefined || resolve(at, '..') === at) return above;
    const rules = ignoreRulesOf(resolve(at, '..'));
    if (rules !== undefined) above.unshift(rules);
  }
}

function ignoreRulesOf(folder: string): IgnoreRules | undefined {
  try {
    return { folder, rules: ignore().add(readFileSync(join(folder, '.gitignore'), 'utf8')) };
  } catch {
    return undefined;
  }
}
