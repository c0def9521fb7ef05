/**
 * Answers the server's questions about files. The server has no file access of its own here, so that it also works
 * where the workspace is not on this machine's disk.
 */
import { type Disposable, FileType, Uri, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { filePattern, languages } from './client-options.ts';

const mostFiles = 5000;
const mostBytes = 20 * 1024 * 1024;

export function answerFileRequests(client: BaseLanguageClient): Disposable[] {
  return [
    client.onRequest('dewright/findFiles', async () => ({ uris: await findFiles() })),
    client.onRequest('dewright/readFile', async ({ uri }: { readonly uri: string }) => ({ text: await readFile(uri) })),
  ];
}

export async function findFiles(): Promise<string[]> {
  const found = await workspace.findFiles(filePattern, '**/node_modules/**', mostFiles);
  return found.map((uri) => uri.toString());
}

/** The text of a file, or null where it is missing, too large, or none of the server's business. */
export async function readFile(requested: string): Promise<string | null> {
  const uri = Uri.joinPath(Uri.parse(requested), '.'); // resolves any `..`, which the check below would not see through
  if (!mayBeRead(uri)) return null;
  try {
    const { type, size } = await workspace.fs.stat(uri);
    if ((type & FileType.File) === 0 || size > mostBytes) return null;
    return new TextDecoder().decode(await workspace.fs.readFile(uri));
  } catch {
    return null;
  }
}

/** Inside a workspace folder, or in or below the folder of an open site, kit or visit file: opened alone, it finds its kits. */
function mayBeRead(uri: Uri): boolean {
  if (workspace.getWorkspaceFolder(uri) !== undefined) return true;
  return workspace.textDocuments.some((document) => {
    if (!languages.includes(document.languageId)) return false;
    const folder = Uri.joinPath(document.uri, '..');
    return folder.scheme === uri.scheme && folder.authority === uri.authority && isBelow(folder.path, uri.path);
  });
}

function isBelow(folder: string, path: string): boolean {
  return path.startsWith(folder.endsWith('/') ? folder : `${folder}/`);
}
