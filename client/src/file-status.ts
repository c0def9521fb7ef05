/** Tells, in the language status of the editor, how many points and findings the open file has. */
import { type Disposable, LanguageStatusSeverity, l10n, languages, type TextDocument, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { LANGUAGES } from './client-options.ts';

export function showFileStatus(client: BaseLanguageClient): Disposable[] {
  const selector = LANGUAGES.map((language) => ({ language }));
  const item = languages.createLanguageStatusItem('dewright.file', selector);
  item.name = 'Dewright';
  item.severity = LanguageStatusSeverity.Information; // never more: the findings themselves say what is wrong
  item.command = { title: l10n.t('Show Problems'), command: 'workbench.actions.view.problems' };
  const update = async (): Promise<void> => {
    const document = window.activeTextEditor?.document;
    if (document === undefined || !LANGUAGES.includes(document.languageId)) return;
    const points = await countPoints(client, document);
    if (window.activeTextEditor?.document === document) item.text = textOf(points, countFindings(document));
  };
  // The editor hears of diagnostics after every change, even where they stay the same.
  return [item, window.onDidChangeActiveTextEditor(update), languages.onDidChangeDiagnostics(update)];
}

/** Null where the file can have none, or where the server is just restarting. */
async function countPoints(client: BaseLanguageClient, { uri }: TextDocument): Promise<number | null> {
  if (!client.isRunning()) return null;
  const params = { uri: uri.toString() };
  const counted = client.sendRequest<{ readonly points: number | null }>('dewright/countPoints', params);
  return (await counted.catch(() => null))?.points ?? null;
}

function countFindings({ uri }: TextDocument): number {
  return languages.getDiagnostics(uri).filter(({ source }) => source === 'dewright').length;
}

function textOf(points: number | null, findings: number): string {
  return points === null ? l10n.t('Findings: {0}', findings) : l10n.t('Points: {0}, findings: {1}', points, findings);
}
