/** Opens a new site file that holds the skeleton of one, not saved yet. */
import { commands, type Disposable, SnippetString, Uri, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

export function offerNewSite(client: BaseLanguageClient): Disposable[] {
  return [
    commands.registerCommand('dewright.newSite', async () => {
      const { snippet } = await client.sendRequest<{ readonly snippet: string }>('dewright/siteSkeleton');
      const document = await workspace.openTextDocument((await freeFile()).with({ scheme: 'untitled' }));
      const editor = await window.showTextDocument(document);
      await editor.insertSnippet(new SnippetString(snippet));
    }),
  ];
}

/** Where saving will put it: in the first folder of the workspace, under a name that is not taken. */
async function freeFile(): Promise<Uri> {
  const folder = workspace.workspaceFolders?.[0]?.uri;
  for (let number = 1; ; number++) {
    const name = number === 1 ? 'new-site.dewsite.yaml' : `new-site-${number}.dewsite.yaml`;
    const file = folder === undefined ? Uri.from({ scheme: 'untitled', path: name }) : Uri.joinPath(folder, name);
    if (!(await isTaken(file))) return file;
  }
}

async function isTaken(file: Uri): Promise<boolean> {
  if (workspace.textDocuments.some(({ uri }) => uri.path === file.path)) return true;
  return workspace.fs.stat(file).then(
    () => true,
    () => false,
  );
}
