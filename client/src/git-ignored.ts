/** Tells what git ignores: the command line leaves that out, and the editor's own search does not. */
import ignore from 'ignore';
import { Uri, workspace } from 'vscode';
import { pathInside, readFile } from './read-file.ts';

/** True for files that a `.gitignore` of the workspace ignores. */
export async function gitIgnored(): Promise<(file: Uri) => boolean> {
  const found = await workspace.findFiles('**/.gitignore', '**/node_modules/**');
  const all = await Promise.all(
    found.map(async (uri) => ({
      folder: Uri.joinPath(uri, '..'),
      rules: ignore().add((await readFile(uri.toString())) ?? ''),
    })),
  );
  return (file) =>
    all.some(({ folder, rules }) => {
      const path = pathInside(folder, file);
      return path !== undefined && rules.ignores(path);
    });
}
