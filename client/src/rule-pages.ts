/** Shows a rule's page, which the server writes, as a read-only document that the editor renders. */
import { commands, type Disposable, Uri, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

/** Findings link to `dewright-rule:/RULE-NAME.md`; package.json has these documents opened in the Markdown preview. */
const scheme = 'dewright-rule';

export function showRulePages(client: BaseLanguageClient): Disposable[] {
  return [
    workspace.registerTextDocumentContentProvider(scheme, {
      provideTextDocumentContent: (uri) => rulePage(client, uri.path.replace(/^\/|\.md$/g, '')),
    }),
    commands.registerCommand('dewright.explain', async (name?: string) => {
      const chosen = name ?? (await askForRule(client));
      if (chosen !== undefined)
        await commands.executeCommand('vscode.open', Uri.from({ scheme, path: `/${chosen}.md` }));
    }),
  ];
}

async function rulePage(client: BaseLanguageClient, name: string): Promise<string> {
  const page = await client.sendRequest<{ readonly markdown: string } | null>('dewright/explain', { name });
  return page?.markdown ?? `There is no rule named \`${name}\`.\n`;
}

async function askForRule(client: BaseLanguageClient): Promise<string | undefined> {
  const names = await client.sendRequest<string[]>('dewright/explainNames');
  return window.showQuickPick(names, { placeHolder: 'Rule to explain' });
}
