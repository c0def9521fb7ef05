/** Files are named by URI. What one file says of another is a path relative to itself. */
import { URI, Utils } from 'vscode-uri';

/** The URI of a file that another names by a relative path. */
export function resolveFile(from: string, relative: string): string {
  const base = URI.parse(from);
  const wellFormed = relative.replace(/\p{Surrogate}/gu, '\ufffd'); // half a character has no place in a URI
  return Utils.resolvePath(Utils.dirname(base), wellFormed).toString();
}

/** How one file would name another: `kits/fennmoor.dewkit.yaml`, `../shared/models.dewkit.yaml`. */
export function relativeName(from: string, to: string): string {
  const [source, target] = [URI.parse(from), URI.parse(to)];
  if (source.scheme !== target.scheme || source.authority !== target.authority) return to;
  const folder = source.path.split('/').slice(0, -1);
  const path = target.path.split('/');
  let shared = 0;
  while (shared < folder.length && shared < path.length - 1 && folder[shared] === path[shared]) shared++;
  return [...folder.slice(shared).map(() => '..'), ...path.slice(shared)].join('/');
}

/** The last part of a file's path. */
export function baseName(file: string): string {
  return Utils.basename(URI.parse(file));
}

export function fileUri(path: string): string {
  return URI.file(path).toString();
}

export function filePath(uri: string): string {
  return URI.parse(uri).fsPath;
}
