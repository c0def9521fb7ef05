/** Which version of its files a pack was made from, in words. */
import { createHash } from 'node:crypto';
import { basename, dirname } from 'node:path';
import { git } from './git.ts';

const DIGITS = 12;

/** @param files the site first: paths with their texts */
export function revisionOf(files: readonly (readonly [path: string, text: string])[]): string {
  const paths = files.map(([path]) => path);
  const commits = paths.map(commitOf);
  const [commit] = commits;
  if (commit !== undefined && commits.every((other) => other === commit)) return `commit ${commit}`;
  const hash = createHash('sha256');
  for (const [, text] of files) hash.update(text).update('\0');
  const contents = `contents ${hash.digest('hex').slice(0, DIGITS)}`;
  return commit === undefined ? contents : `${contents}, not committed`;
}

/** The commit that is checked out, where the file stands as it is in it. */
function commitOf(path: string): string | undefined {
  const [folder, name] = [dirname(path), basename(path)];
  const known = git(folder, 'ls-files', '--error-unmatch', '--', name);
  const changes = git(folder, 'status', '--porcelain', '--', name);
  const head = git(folder, 'rev-parse', '--short=12', 'HEAD');
  if (typeof known === 'string' || typeof changes === 'string' || typeof head === 'string') return undefined;
  return changes.said === '' ? head.said.trim() : undefined;
}
