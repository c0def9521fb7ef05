/** Reads files for the server, and none that are not its business. */
import { FileType, Uri, workspace } from 'vscode';
import { LANGUAGES } from './client-options.ts';

const MOST_BYTES = 20 * 1024 * 1024;

/** The text of a file, or null where it is missing, too large, or out of bounds. */
export async function readFile(requested: string): Promise<string | null> {
  const uri = requestedFile(requested);
  if (!mayBeRead(uri)) return null;
  try {
    const { type, size } = await workspace.fs.stat(uri);
    if ((type & FileType.File) === 0 || size > MOST_BYTES) return null;
    return new TextDecoder().decode(await workspace.fs.readFile(uri));
  } catch {
    return null;
  }
}

/** Of a file that the server asks for, without any `..`, which `mayBeRead` would not see through. */
export function requestedFile(uri: string): Uri {
  return Uri.joinPath(Uri.parse(uri), '.');
}

/** Inside a workspace folder, or below the folder of an open site, kit or visit file: opened alone, it finds its kits. */
export function mayBeRead(uri: Uri): boolean {
  if (workspace.getWorkspaceFolder(uri) !== undefined) return true;
  return workspace.textDocuments.some(
    (document) =>
      LANGUAGES.includes(document.languageId) && pathInside(Uri.joinPath(document.uri, '..'), uri) !== undefined,
  );
}

/** The path of a file from a folder that it is in or below. */
export function pathInside(folder: Uri, file: Uri): string | undefined {
  if (folder.scheme !== file.scheme || folder.authority !== file.authority) return undefined;
  const start = folder.path.endsWith('/') ? folder.path : `${folder.path}/`;
  return file.path.startsWith(start) ? file.path.slice(start.length) : undefined;
}
