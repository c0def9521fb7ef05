/** Writes the handover pack of the site that is open: the text comes from the server, the place from the user. */
import { commands, type Disposable, l10n, type Uri, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

export function offerPack(client: BaseLanguageClient): Disposable[] {
  return [commands.registerCommand('dewright.writePack', () => writePack(client))];
}

async function writePack(client: BaseLanguageClient): Promise<void> {
  const document = window.activeTextEditor?.document;
  if (document?.languageId !== 'dewright-site') {
    void window.showInformationMessage(
      l10n.t('Open a site file first: the pack is written for the site that is open.'),
    );
    return;
  }
  const proposed = document.uri.with({ path: document.uri.path.replace(/(\.dewsite)?\.yaml$/, '.html') });
  const target = await window.showSaveDialog({
    ...(document.isUntitled ? {} : { defaultUri: proposed }),
    filters: { HTML: ['html'], Markdown: ['md'] },
    title: l10n.t('Write the Handover Pack'),
  });
  if (target === undefined) return;
  const format = target.path.endsWith('.md') ? 'md' : 'html';
  const params = { uri: document.uri.toString(), format };
  const pack = await client.sendRequest<{ readonly text: string } | null>('dewright/pack', params);
  if (pack === null) return;
  await workspace.fs.writeFile(target, new TextEncoder().encode(pack.text));
  const open = l10n.t('Open');
  const chosen = await window.showInformationMessage(l10n.t('The pack is written: {0}', nameOf(target)), open);
  if (chosen === open) await commands.executeCommand('vscode.open', target);
}

function nameOf({ path }: Uri): string {
  return path.slice(path.lastIndexOf('/') + 1);
}
