/** Which version of its files a pack was made from, in words. */
import { basename, dirname } from 'node:path';
import { contentsName } from '../report/contents-name.ts';
import { git } from './git.ts';

/** @param files the site first: paths with their texts */
export async function revisionOf(files: readonly (readonly [path: string, text: string])[]): Promise<string> {
  const paths = files.map(([path]) => path);
  const commits = paths.map(commitOf);
  const [commit] = commits;
  if (commit !== undefined && commits.every((other) => other === commit)) return `commit ${commit}`;
  const contents = await contentsName(files.map(([, text]) => text));
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
