import { describe, expect, it } from 'vitest';
import type {
  CodeAction,
  CodeLens,
  CompletionItem,
  DocumentSymbol,
  InlayHint,
  Location,
  LocationLink,
  Position,
  SelectionRange,
  SemanticTokens,
  WorkspaceEdit,
} from 'vscode-languageserver';
import { lineIndexOf } from '../../server/src/base/line-index.ts';
import { KIT, SITE, VISIT } from '../features/fennmoor.ts';
import type { SessionOptions } from './session.ts';
import { sessionOfTest } from './session-of-test.ts';

const SITE_URI = 'file:///fennmoor.dewsite.yaml';
const KIT_URI = 'file:///kits/fennmoor.dewkit.yaml';
const VISIT_URI = 'file:///first.dewvisit.yaml';
const FILES = { [SITE_URI]: SITE, [KIT_URI]: KIT, [VISIT_URI]: VISIT };

const ALL_OF_IT = {
  textDocument: { diagnostic: {}, completion: { completionItem: { snippetSupport: true } } },
  workspace: { configuration: true, inlayHint: { refreshSupport: true }, codeLens: { refreshSupport: true } },
  window: { showDocument: { support: true } },
};

/** A session with the site open, and a way to ask about places in it by the words there. */
async function opened(options: Partial<SessionOptions> = {}, text = SITE) {
  const started = await sessionOfTest({ files: FILES, capabilities: ALL_OF_IT, ...options });
  await started.open(SITE_URI, text);
  const textDocument = { uri: SITE_URI };
  const positionOf = (words: string): Position =>
    lineIndexOf(text).positionAt(text.indexOf(words.replace('|', '')) + Math.max(0, words.indexOf('|')));
  const ask = <Answer>(method: string, params: object): Promise<Answer> =>
    started.editor.sendRequest<Answer>(method, { textDocument, ...params });
  return { ...started, textDocument, positionOf, ask };
}

const whole = { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } };

describe('the server', () => {
  it('offers what the editor can use', async () => {
    const { initialized } = await opened();
    expect(initialized.capabilities).toMatchObject({
      completionProvider: {},
      renameProvider: { prepareProvider: true },
      inlayHintProvider: { resolveProvider: true },
      semanticTokensProvider: { full: true, range: true },
      executeCommandProvider: { commands: ['dewright.showPlace'] },
      workspace: { fileOperations: { willRename: {} } },
    });
    expect((await opened({ capabilities: {} })).initialized.capabilities.executeCommandProvider).toBeUndefined();
  });

  it('completes with snippets, or without where the editor has none', async () => {
    const text = SITE.replace('mode: continuous', 'mode: ').replace('      serial: A1001', '      hea');
    const withSnippets = await opened({ isOurs: true }, text);
    const keys = await withSnippets.ask<CompletionItem[]>('textDocument/completion', {
      position: withSnippets.positionOf('hea|\n'),
    });
    expect(keys[0]).toMatchObject({
      label: 'serial',
      insertTextFormat: 2,
      textEdit: { newText: 'serial: $1' },
      sortText: '0000',
    });
    const without = await opened({ capabilities: {} }, text);
    const plain = await without.ask<CompletionItem[]>('textDocument/completion', {
      position: without.positionOf('hea|\n'),
    });
    expect(plain[0]).toMatchObject({ insertTextFormat: 1, textEdit: { newText: 'serial: ' } });
  });

  it('asks the editor of this product to go on where a name is to be chosen', async () => {
    const { ask, positionOf } = await opened({ isOurs: true }, `${SITE}  A-1:\n    sp`);
    const items = await ask<CompletionItem[]>('textDocument/completion', { position: positionOf('A-1:\n    sp|') });
    expect(items.find(({ label }) => label === 'title')?.command).toBeUndefined();
    expect(items.find(({ label }) => label === 'space')?.command?.command).toBe('editor.action.triggerSuggest');
  });

  it('finds definitions and references in other files', async () => {
    const { ask, positionOf } = await opened();
    const position = positionOf('model: |hp-heated');
    const [link] = await ask<LocationLink[]>('textDocument/definition', { position });
    expect(link).toMatchObject({ targetUri: KIT_URI, targetRange: { start: { line: 3, character: 2 } } });
    const places = await ask<Location[]>('textDocument/references', {
      position,
      context: { includeDeclaration: true },
    });
    expect(places.map(({ uri }) => uri)).toEqual([KIT_URI, SITE_URI, SITE_URI]);
    expect(await ask('textDocument/documentHighlight', { position })).toMatchObject([{ kind: 2 }, { kind: 2 }]);
    expect(await ask('textDocument/documentLink', {})).toMatchObject([{ target: KIT_URI }]);
  });

  it('renames in every file, and says why it does not', async () => {
    const { ask, positionOf } = await opened();
    const position = positionOf('  K2-MT|-101:');
    expect(await ask('textDocument/prepareRename', { position })).toMatchObject({ placeholder: 'K2-MT-101' });
    const edit = await ask<WorkspaceEdit>('textDocument/rename', { position, newName: 'K2-MT-201' });
    expect(Object.keys(edit.changes ?? {})).toEqual([SITE_URI, VISIT_URI]);
    await expect(ask('textDocument/rename', { position, newName: 'a b' })).rejects.toThrow(
      'A tag has no blanks and no quotes.',
    );
    await expect(ask('textDocument/prepareRename', { position: positionOf('contin|uous') })).rejects.toThrow(
      'Only spaces',
    );
  });

  it('follows a kit that moves', async () => {
    const { editor } = await opened();
    const files = [{ oldUri: KIT_URI, newUri: 'file:///models/fennmoor.dewkit.yaml' }];
    const edit = await editor.sendRequest<WorkspaceEdit>('workspace/willRenameFiles', { files });
    expect(edit.changes?.[SITE_URI]?.map(({ newText }) => newText)).toEqual(['models/fennmoor.dewkit.yaml']);
  });

  it('outlines, folds, selects and colours', async () => {
    const { ask, positionOf } = await opened();
    const symbols = await ask<DocumentSymbol[]>('textDocument/documentSymbol', {});
    expect(symbols.map(({ name }) => name)).toEqual(['dewright', 'site', 'spaces', 'points']);
    expect(symbols[2]?.children?.[0]).toMatchObject({ name: 'kiln-2', detail: 'dew point 34.7 … 74.9 °C' });
    expect(await ask('textDocument/foldingRange', {})).toContainEqual({ startLine: 5, endLine: 15 });
    const [selection] = await ask<SelectionRange[]>('textDocument/selectionRange', {
      positions: [positionOf('35 .. 8|8 %RH')],
    });
    expect(selection?.range).toEqual({ start: positionOf('35 .. 88 %RH'), end: positionOf('35 .. 88| %RH') });
    expect(selection?.parent?.range.end).toEqual(positionOf('35 .. 88 %RH|'));
    const { data } = await ask<SemanticTokens>('textDocument/semanticTokens/full', {});
    expect(data.slice(0, 5)).toEqual([2, 6, 8, 3, 1]);
    const part = await ask<SemanticTokens>('textDocument/semanticTokens/range', { range: whole });
    expect(part.data).toEqual(data);
  });

  it('finds symbols of the workspace', async () => {
    const { editor } = await opened();
    const symbols = await editor.sendRequest<{ name: string }[]>('workspace/symbol', { query: 'oak' });
    expect(symbols).toMatchObject([{ name: 'kiln-2', containerName: 'Kiln 2, green oak' }]);
  });

  it('shows hints and lenses as the settings say, and tells on demand how they came about', async () => {
    const { ask, editor } = await opened({
      settings: { inlayHints: { envelope: false }, codeLens: { spaces: false } },
    });
    const hints = await ask<InlayHint[]>('textDocument/inlayHint', { range: whole });
    expect(hints.map(({ label }) => label)).toContain('23.1 V at the probe');
    expect(hints.some(({ label }) => String(label).startsWith('dew point'))).toBe(false);
    const resolved = await editor.sendRequest<InlayHint>(
      'inlayHint/resolve',
      hints.find(({ label }) => label === '23.1 V at the probe') ?? {},
    );
    expect(resolved.tooltip).toMatchObject({ value: expect.stringContaining('Least voltage at the probe') });
    const lenses = await ask<CodeLens[]>('textDocument/codeLens', {});
    expect(lenses.map(({ command }) => command?.title)).toContain('At most 64 %RH at the sensor');
    expect(lenses.some(({ command }) => command?.title.startsWith('Dew point'))).toBe(false);
  });

  it('shows none where one switch turns them off', async () => {
    const { ask } = await opened({ settings: { inlayHints: { enabled: false }, codeLens: { enabled: false } } });
    expect(await ask('textDocument/inlayHint', { range: whole })).toEqual([]);
    expect(await ask('textDocument/codeLens', {})).toEqual([]);
  });

  it('shows the place that a lens speaks of', async () => {
    const { ask, editor } = await opened();
    const shown = new Promise((resolve) => {
      editor.onRequest('window/showDocument', (params) => {
        resolve(params);
        return { success: true };
      });
    });
    const [lens] = await ask<CodeLens[]>('textDocument/codeLens', {});
    await editor.sendRequest('workspace/executeCommand', {
      command: lens?.command?.command,
      arguments: lens?.command?.arguments,
    });
    expect(await shown).toMatchObject({ uri: SITE_URI, takeFocus: true, selection: { start: { line: 9 } } });
  });

  it('offers fixes, acceptances, explanations and refactorings', async () => {
    const faulty = SITE.replace('{air-temperature: K2-MT-101, tolerance: 3 %RH}', '{tolerance: 3 %RH}');
    const { ask, positionOf } = await opened({ isOurs: true }, faulty);
    const start = positionOf('relative-humidity: {tol');
    const actions = await ask<CodeAction[]>('textDocument/codeAction', {
      range: { start, end: start },
      context: { diagnostics: [] },
    });
    const titles = actions.map(({ title }) => title);
    expect(titles).toContain('Accept air-temperature-missing here, with a reason');
    expect(titles.at(-1)).toBe('Explain air-temperature-missing');
    expect(titles.find((title) => title.startsWith('Report'))).toBe(
      'Report dew point instead: it needs no air temperature',
    );
    const accept = actions.find(({ title }) => title.startsWith('Accept'));
    expect(accept?.edit?.changes?.[SITE_URI]?.[0]?.newText).toBe(
      '      # accept air-temperature-missing: say why this stands\n',
    );
    const reasonStart = { line: start.line, character: '      # accept air-temperature-missing: '.length };
    expect(accept?.command?.arguments?.[1]).toMatchObject({ start: reasonStart });
    const rewrite = await ask<CodeAction[]>('textDocument/codeAction', {
      range: { start: positionOf('99 kPa'), end: positionOf('99 kPa') },
      context: { diagnostics: [], only: ['refactor'] },
    });
    expect(rewrite.map(({ kind }) => kind)).toEqual(rewrite.map(() => 'refactor.rewrite'));
    expect(rewrite.map(({ title }) => title)).toContain('Write as 990 hPa');
  });

  it('works on the text as it was last typed', async () => {
    const { ask, change } = await opened();
    await change(SITE_URI, SITE.replace('  kiln-2:', '  kiln-3:'));
    const symbols = await ask<DocumentSymbol[]>('textDocument/documentSymbol', {});
    expect(symbols[2]?.children?.map(({ name }) => name)).toEqual(['kiln-3', 'hall']);
  });
});
