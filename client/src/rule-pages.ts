/** Shows a rule's page, which the server writes, as a read-only file that the editor renders. */
import {
  commands,
  Disposable,
  FileSystemError,
  type FileSystemProvider,
  FileType,
  l10n,
  Uri,
  window,
  workspace,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

/** Findings link to `dewright-rule:/RULE-NAME.md`; package.json has these files opened in the Markdown preview. */
const SCHEME = 'dewright-rule';

export function showRulePages(client: BaseLanguageClient): Disposable[] {
  return [
    workspace.registerFileSystemProvider(SCHEME, rulePages(client), { isReadonly: true }),
    commands.registerCommand('dewright.explain', async (name?: string) => {
      const chosen = name ?? (await askForRule(client));
      if (chosen === undefined) return;
      await commands.executeCommand('vscode.open', Uri.from({ scheme: SCHEME, path: `/${chosen}.md` }));
    }),
  ];
}

async function askForRule(client: BaseLanguageClient): Promise<string | undefined> {
  const names = await client.sendRequest<string[]>('dewright/explainNames');
  return window.showQuickPick(names, { placeHolder: l10n.t('Rule to explain') });
}

/** A file system and no mere text provider, because the preview watches its file and is reopened with the window. */
function rulePages(client: BaseLanguageClient): FileSystemProvider {
  const readFile = async (uri: Uri): Promise<Uint8Array> => {
    const name = uri.path.replace(/^\/|\.md$/g, '');
    const page = await client.sendRequest<{ readonly markdown: string } | null>('dewright/explain', { name });
    if (page === null) throw FileSystemError.FileNotFound(uri);
    return new TextEncoder().encode(page.markdown);
  };
  const nothing = new Disposable(() => undefined);
  const refuse = (): never => {
    throw FileSystemError.NoPermissions(l10n.t('The pages of the rules cannot be changed.'));
  };
  return {
    readFile,
    stat: async (uri) => ({ type: FileType.File, ctime: 0, mtime: 0, size: (await readFile(uri)).length }),
    readDirectory: () => [],
    onDidChangeFile: () => nothing,
    watch: () => nothing,
    writeFile: refuse,
    createDirectory: refuse,
    delete: refuse,
    rename: refuse,
  };
}
