import { expect, it } from 'vitest';
import type { CodeAction, CompletionItem, DocumentDiagnosticReport, Hover } from 'vscode-languageserver';
import { lineIndexOf } from '../../server/src/base/line-index.ts';
import { KIT, SITE } from '../features/fennmoor.ts';
import { sessionOfTest } from './session-of-test.ts';

const SITE_URI = 'file:///fennmoor.dewsite.yaml';
const VISIT_URI = 'file:///first.dewvisit.yaml';
const VISIT = `dewright: 1
visit: {site: fennmoor, date: 2026-09-02}
steps:
  heater-on: {point: K2-MT-101, done: true}
settings:
  - {point: K2-MT-101, AO1.span: 0 .. 80 %RH}
`;
const FILES = { [SITE_URI]: SITE, 'file:///kits/fennmoor.dewkit.yaml': KIT, [VISIT_URI]: VISIT };
const ALL_OF_IT = { textDocument: { diagnostic: {}, completion: { completionItem: { snippetSupport: true } } } };

async function openedVisit() {
  const started = await sessionOfTest({ files: FILES, capabilities: ALL_OF_IT });
  await started.open(VISIT_URI, VISIT);
  const at = (words: string) => lineIndexOf(VISIT).positionAt(VISIT.indexOf(words));
  const ask = <Answer>(method: string, params: object): Promise<Answer> =>
    started.editor.sendRequest<Answer>(method, { textDocument: { uri: VISIT_URI }, ...params });
  const codes = async (): Promise<readonly unknown[]> => {
    const report = await ask<DocumentDiagnosticReport>('textDocument/diagnostic', {});
    return report.kind === 'full' ? report.items.map(({ code }) => code) : [];
  };
  return { ...started, at, ask, codes };
}

it('what is typed in the site changes what is found in its visit', async () => {
  const { open, codes } = await openedVisit();
  await expect.poll(codes, { timeout: 5000 }).toContain('setting-differs');
  await open(SITE_URI, SITE.replace('span: 0 .. 100 %RH', 'span: 0 .. 80 %RH'));
  expect(await codes()).not.toContain('setting-differs');
});

it('the fix of a setting that differs edits the site file', async () => {
  const { ask, at, codes } = await openedVisit();
  await expect.poll(codes, { timeout: 5000 }).toContain('setting-differs');
  const place = at('0 .. 80');
  const actions = await ask<CodeAction[]>('textDocument/codeAction', {
    range: { start: place, end: place },
    context: { diagnostics: [] },
  });
  const fix = actions.find(({ title }) => title.startsWith('Set the site file to the instrument'));
  const changed = fix?.edit?.documentChanges?.map((change) => 'textDocument' in change && change.textDocument.uri);
  expect(changed ?? Object.keys(fix?.edit?.changes ?? {})).toEqual([SITE_URI]);
});

it('a step is explained, and the next ones are offered', async () => {
  const { editor, ask, at, codes } = await openedVisit();
  await expect.poll(codes, { timeout: 5000 }).toContain('step-open');
  const hover = await ask<Hover>('textDocument/hover', { position: at('heater-on') });
  expect(JSON.stringify(hover.contents)).toContain('The heater was ordered switched on');
  const place = { line: 4, character: 0 };
  const changed = VISIT.replace('settings:', '  \nsettings:');
  await editor.sendNotification('textDocument/didChange', {
    textDocument: { uri: VISIT_URI, version: 2 },
    contentChanges: [{ text: changed }],
  });
  const items = await ask<CompletionItem[]>('textDocument/completion', { position: { ...place, character: 2 } });
  expect(items.map(({ label }) => label)).toContain('supply-measured');
});
