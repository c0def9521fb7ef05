/**
 * Answers the server's questions about files. The server has no file access of its own here, so that it also works
 * where the workspace is not on this machine's disk.
 */
import { type Disposable, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { FILE_PATTERN } from './client-options.ts';
import { readCommitted } from './committed.ts';
import { gitIgnored } from './git-ignored.ts';
import { readFile } from './read-file.ts';

const MOST_FILES = 5000;

export function answerFileRequests(client: BaseLanguageClient): Disposable[] {
  return [
    client.onRequest('dewright/findFiles', async () => ({ uris: await findFiles() })),
    client.onRequest('dewright/readFile', async ({ uri }: { readonly uri: string }) => ({ text: await readFile(uri) })),
    client.onRequest('dewright/readCommitted', async ({ uri }: { readonly uri: string }) => ({
      text: await readCommitted(uri),
    })),
  ];
}

/** The files of the workspace that the product reads. */
export async function findFiles(): Promise<string[]> {
  const [found, isIgnored] = await Promise.all([
    workspace.findFiles(FILE_PATTERN, '**/node_modules/**', MOST_FILES),
    gitIgnored(),
  ]);
  return found.filter((uri) => !isIgnored(uri)).map((uri) => uri.toString());
}
