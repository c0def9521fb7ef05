/** Reads files and the kits they name into a workspace. */
import { readFileSync } from 'node:fs';
import { relative, sep } from 'node:path';
import { filePath, fileUri } from '../analysis/file-location.ts';
import { Workspace } from '../analysis/workspace.ts';
import { fileKindOf } from '../model/schema.ts';
import type { FoundFiles } from './find-files.ts';
import { CallProblem } from './problem.ts';

export function loadWorkspace({ files, whole }: FoundFiles): Workspace {
  const workspace = new Workspace();
  for (const path of files) workspace.set(fileUri(path), readText(path));
  for (const site of workspace.files('site')) loadKits(workspace, site);
  if (whole) workspace.markWhole();
  return workspace;
}

/** A kit that is not there or cannot be read stays unknown: the site's finding says so. */
export function loadKits(workspace: Workspace, site: string): void {
  for (const kit of workspace.kitsOf(site)) {
    if (workspace.has(kit) || fileKindOf(kit) !== 'kit') continue;
    try {
      workspace.set(kit, readFileSync(filePath(kit), 'utf8'));
    } catch {
      // Reported at the place that names the kit.
    }
  }
}

export function readText(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    throw new CallProblem(`${path}: ${reasonOf(error)}`);
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
