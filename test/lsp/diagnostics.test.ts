import { expect, it } from 'vitest';
import type {
  DocumentDiagnosticReport,
  PublishDiagnosticsParams,
  WorkspaceDiagnosticReport,
} from 'vscode-languageserver';
import { KIT, SITE } from '../features/fennmoor.ts';
import { sessionOfTest } from './session-of-test.ts';

const SITE_URI = 'file:///fennmoor.dewsite.yaml';
const OTHER_URI = 'file:///other.dewsite.yaml';
const KIT_URI = 'file:///kits/fennmoor.dewkit.yaml';
const BROKEN = SITE.replace('mode: continuous', 'mode: contnuous');
const FILES = { [SITE_URI]: BROKEN, [OTHER_URI]: BROKEN, [KIT_URI]: KIT };
const PULLS = { textDocument: { diagnostic: {} } };

function words(items: readonly { readonly code?: unknown }[]): readonly unknown[] {
  return [...new Set(items.map(({ code }) => code))];
}

it('an editor that pulls gets findings with an id, and is told where nothing has changed', async () => {
  const session = await sessionOfTest({ files: FILES, capabilities: PULLS });
  await session.open(SITE_URI, BROKEN);
  const ask = (previousResultId?: string): Promise<DocumentDiagnosticReport> =>
    session.editor.sendRequest('textDocument/diagnostic', {
      textDocument: { uri: SITE_URI },
      ...(previousResultId === undefined ? {} : { previousResultId }),
    });
  const first = await ask();
  expect(first.kind === 'full' && words(first.items)).toContain('schema');
  expect(await ask(first.resultId)).toEqual({ kind: 'unchanged', resultId: first.resultId });
});

it('the files of the workspace that are not open are told of once, and again only when they change', async () => {
  const session = await sessionOfTest({ files: FILES, capabilities: PULLS });
  await session.open(SITE_URI, BROKEN);
  const ask = (previousResultIds: readonly { uri: string; value: string }[]): Promise<WorkspaceDiagnosticReport> =>
    session.editor.sendRequest('workspace/diagnostic', { previousResultIds });
  const { items } = await ask([]);
  expect(items.map(({ uri }) => uri).toSorted()).toEqual([KIT_URI, OTHER_URI]);
  const other = items.find(({ uri }) => uri === OTHER_URI);
  expect(other?.kind === 'full' && words(other.items)).toContain('tag-duplicate');
  const known = items.map(({ uri, resultId }) => ({ uri, value: resultId ?? '' }));
  expect((await ask(known)).items).toEqual([]);
});

it('an editor that does not pull is sent the findings, of a burst of changes those of the last', async () => {
  const session = await sessionOfTest({ files: FILES, capabilities: {} });
  const sent: PublishDiagnosticsParams[] = [];
  session.editor.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
    sent.push(params);
  });
  await session.open(SITE_URI, BROKEN);
  const change = (version: number, text: string): Promise<void> =>
    session.editor.sendNotification('textDocument/didChange', {
      textDocument: { uri: SITE_URI, version },
      contentChanges: [{ text }],
    });
  for (let version = 2; version < 30; version++) await change(version, `${BROKEN}# ${version}\n`);
  await change(30, SITE);
  await expect.poll(() => sent.at(-1)?.version, { timeout: 5000 }).toBe(30);
  expect(words(sent.at(-1)?.diagnostics ?? [])).not.toContain('schema');
  expect(sent.length).toBeLessThan(29);
});
