/** Outline, symbols, folding, selection and tokens in the terms of the protocol. */
import { type DocumentSymbol, FoldingRangeKind, type SelectionRange, SymbolKind } from 'vscode-languageserver';
import type { ParsedFile } from '../analysis/parsed-file.ts';
import { foldsOf } from '../features/folding.ts';
import { type OutlineItem, type OutlineKind, outlineOf } from '../features/outline.ts';
import { selectionAt } from '../features/selection.ts';
import { semanticTokens } from '../features/semantic-tokens.ts';
import { type WorkspaceSymbol, workspaceSymbols } from '../features/workspace-symbols.ts';
import { rangeIn } from './protocol.ts';
import { tokenData } from './semantic-token-data.ts';
import type { Served } from './served.ts';

const OUTLINE_KINDS: Readonly<Record<OutlineKind, SymbolKind>> = {
  section: SymbolKind.Module,
  space: SymbolKind.Namespace,
  point: SymbolKind.Object,
  model: SymbolKind.Class,
  step: SymbolKind.Event,
  quantity: SymbolKind.Variable,
  signal: SymbolKind.Interface,
  alarm: SymbolKind.Event,
  phase: SymbolKind.Struct,
  part: SymbolKind.Property,
};

const SYMBOL_KINDS: Readonly<Record<WorkspaceSymbol['kind'], SymbolKind>> = {
  site: SymbolKind.Package,
  kit: SymbolKind.Package,
  space: SymbolKind.Namespace,
  point: SymbolKind.Object,
  model: SymbolKind.Class,
};

export function serveStructure({ connection, workspace, analysisOf, find }: Served): void {
  connection.onDocumentSymbol(async ({ textDocument }) => {
    const analysis = await analysisOf(textDocument.uri);
    if (analysis === undefined) return [];
    return outlineOf(analysis).map((item) => documentSymbol(analysis.parsed, item));
  });
  connection.onWorkspaceSymbol(({ query }) =>
    workspaceSymbols(workspace, query).flatMap(({ name, title, kind, file, range }) => {
      const parsed = find(file);
      if (parsed === undefined) return [];
      const location = { uri: file, range: rangeIn(parsed, range) };
      return [{ name, kind: SYMBOL_KINDS[kind], location, ...(title === '' ? {} : { containerName: title }) }];
    }),
  );
  connection.onFoldingRanges(async ({ textDocument }) => {
    const parsed = (await analysisOf(textDocument.uri))?.parsed;
    return (parsed === undefined ? [] : foldsOf(parsed)).map(({ firstLine, lastLine, kind }) => ({
      startLine: firstLine,
      endLine: lastLine,
      ...(kind === 'comment' ? { kind: FoldingRangeKind.Comment } : {}),
    }));
  });
  connection.onSelectionRanges(async ({ textDocument, positions }) => {
    const parsed = (await analysisOf(textDocument.uri))?.parsed;
    if (parsed === undefined) return [];
    return positions.map((position): SelectionRange => {
      const outermostFirst = selectionAt(parsed, parsed.lines.offsetAt(position)).toReversed();
      let selection: SelectionRange = { range: { start: position, end: position } };
      for (const [index, range] of outermostFirst.entries()) {
        const own = rangeIn(parsed, range);
        selection = index === 0 ? { range: own } : { range: own, parent: selection };
      }
      return selection;
    });
  });
  connection.languages.semanticTokens.on(async ({ textDocument }) => {
    const parsed = (await analysisOf(textDocument.uri))?.parsed;
    return parsed === undefined ? { data: [] } : tokenData(parsed, semanticTokens(parsed));
  });
  connection.languages.semanticTokens.onRange(async ({ textDocument, range }) => {
    const parsed = (await analysisOf(textDocument.uri))?.parsed;
    if (parsed === undefined) return { data: [] };
    const within = { start: parsed.lines.offsetAt(range.start), end: parsed.lines.offsetAt(range.end) };
    return tokenData(parsed, semanticTokens(parsed, within));
  });
}

function documentSymbol(
  parsed: ParsedFile,
  { name, detail, kind, range, nameRange, children }: OutlineItem,
): DocumentSymbol {
  return {
    name,
    detail,
    kind: OUTLINE_KINDS[kind],
    range: rangeIn(parsed, range),
    selectionRange: rangeIn(parsed, nameRange),
    children: children.map((child) => documentSymbol(parsed, child)),
  };
}
