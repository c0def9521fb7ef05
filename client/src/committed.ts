/**
 * Files as they were last committed, from the editor's own git extension. In a workspace that is not trusted, and where
 * the editor has no git, there are none: nothing is started for them.
 */
import { extensions, type Uri, workspace } from 'vscode';
import { mayBeRead, requestedFile } from './read-file.ts';

interface Repository {
  show(ref: string, path: string): Promise<string>;
}

/** The part of the API of the editor's git extension that is used here, version 1. */
interface GitApi {
  getRepository(uri: Uri): Repository | null;
  getRepositoryRoot(uri: Uri): Promise<Uri | null>;
  openRepository(root: Uri): Promise<Repository | null>;
}

interface GitExtension {
  getAPI(version: 1): GitApi;
}

export async function readCommitted(requested: string): Promise<string | null> {
  const uri = requestedFile(requested);
  const git = extensions.getExtension<GitExtension>('vscode.git');
  if (!workspace.isTrusted || git === undefined || !mayBeRead(uri)) return null;
  try {
    const repository = await repositoryOf(uri, (await git.activate()).getAPI(1));
    return repository === null ? null : await repository.show('HEAD', uri.fsPath);
  } catch {
    return null; // switched off by the user, or never committed
  }
}

/** Just after a window was opened, the editor may not have come to it yet. */
async function repositoryOf(uri: Uri, git: GitApi): Promise<Repository | null> {
  const known = git.getRepository(uri);
  if (known !== null) return known;
  const root = await git.getRepositoryRoot(uri);
  return root === null ? null : git.openRepository(root);
}
