/**
 * Files as they were last committed, from the editor's own git extension. In a workspace that is not trusted, and where
 * the editor has no git, there are none: nothing is started for them.
 */
import { extensions, Uri, workspace } from 'vscode';
import { mayBeRead } from './read-file.ts';

/** The part of the API of the editor's git extension that is used here, version 1. */
interface GitApi {
  getRepository(uri: Uri): { show(ref: string, path: string): Promise<string> } | null;
}

interface GitExtension {
  getAPI(version: 1): GitApi;
}

export async function readCommitted(requested: string): Promise<string | null> {
  const uri = Uri.joinPath(Uri.parse(requested), '.');
  const git = extensions.getExtension<GitExtension>('vscode.git');
  if (!workspace.isTrusted || git === undefined || !mayBeRead(uri)) return null;
  try {
    const { getAPI } = git.isActive ? git.exports : await git.activate();
    const repository = getAPI(1).getRepository(uri);
    return repository === null ? null : await repository.show('HEAD', uri.fsPath);
  } catch {
    return null; // switched off by the user, or never committed
  }
}
