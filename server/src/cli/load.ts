/** Reads files, the kits they name, and the sites and visits that belong to them into a workspace. */
import { readFileSync } from 'node:fs';
import { relative, sep } from 'node:path';
import { filePath, fileUri } from '../analysis/file-location.ts';
import { Workspace } from '../analysis/workspace.ts';
import { fileKindOf } from '../model/schema.ts';
import type { FoundFiles } from './find-files.ts';
import { sitesNear, visitsNear } from './find-visits.ts';
import { CallProblem } from './problem.ts';

/** Files with all that they are compared with. Of a folder that was searched, its visits are known already. */
export function loadWorkspace({ files, whole }: FoundFiles): Workspace {
  const workspace = loadFiles(files);
  for (const path of files) loadRelated(workspace, path, !whole);
  workspace.markWhole({ uses: whole ? [] : undefined, siteIds: [] });
  return workspace;
}

export function loadFiles(files: readonly string[]): Workspace {
  const workspace = new Workspace();
  for (const path of files) workspace.set(fileUri(path), readText(path));
  return workspace;
}

/** The kits of a file, the site of a visit that no known site has the id of, and where wanted the visits to a site. */
export function loadRelated(workspace: Workspace, path: string, withVisits: boolean): void {
  const file = fileUri(path);
  const kind = fileKindOf(path);
  if (kind === 'visit' && workspace.sitesOf(file).length === 0) {
    for (const site of sitesNear(path)) setIfReadable(workspace, site);
    for (const site of workspace.sitesOf(file)) loadRelated(workspace, filePath(site), true);
  }
  if (kind === 'site' && withVisits) for (const visit of visitsNear(path)) setIfReadable(workspace, visit);
  for (const kit of workspace.kitsOf(file)) if (fileKindOf(kit) === 'kit') setIfReadable(workspace, filePath(kit));
}

/** What cannot be read stays unknown. */
function setIfReadable(workspace: Workspace, path: string): void {
  const file = fileUri(path);
  if (workspace.has(file)) return;
  try {
    workspace.set(file, readFileSync(path, 'utf8'));
  } catch {
    // Reported at the place that names it.
  }
}

export function readText(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    throw new CallProblem(`${shownPath(path)}: ${reasonOf(error)}`);
  }
}

/** How a path is shown: from the current folder, with forward slashes. */
export function shownPath(path: string): string {
  const shown = relative(process.cwd(), path).split(sep).join('/');
  return shown === '' || shown.startsWith('../../../') ? path : shown;
}

export function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  switch (code) {
    case 'ENOENT':
      return 'there is no such file';
    case 'EACCES':
    case 'EPERM':
      return 'access is not allowed';
    case 'EISDIR':
      return 'this is a folder';
    case 'ENOSPC':
      return 'the disk is full';
    case 'EROFS':
      return 'the disk is read-only';
    default:
      return 'it cannot be read or written';
  }
}
