/** Outline, symbols, folding, selection and tokens in the terms of the protocol. */
import {
  type DocumentSymbol,
  FoldingRangeKind,
  type Position,
  type SelectionRange,
  SymbolKind,
} from 'vscode-languageserver';
import type { ParsedFile } from '../../analysis/parsed-file.ts';
import { type WorkspaceSymbol, workspaceSymbols } from '../../features/moving/workspace-symbols.ts';
import { foldsOf } from '../../features/reading/folding.ts';
import { type OutlineItem, type OutlineKind, outlineOf } from '../../features/reading/outline.ts';
import { selectionAt } from '../../features/reading/selection.ts';
import { semanticTokens } from '../../features/reading/semantic-tokens.ts';
import { rangeIn, stretchIn } from '../protocol.ts';
import type { Served } from '../served.ts';
import { tokenData } from './semantic-token-data.ts';

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
  connection.onFoldingRanges(({ textDocument }) => {
    const parsed = find(textDocument.uri);
    return (parsed === undefined ? [] : foldsOf(parsed)).map(({ firstLine, lastLine, kind }) => ({
      startLine: firstLine,
      endLine: lastLine,
      ...(kind === 'comment' ? { kind: FoldingRangeKind.Comment } : {}),
    }));
  });
  connection.onSelectionRanges(({ textDocument, positions }) => {
    const parsed = find(textDocument.uri);
    return parsed === undefined ? [] : positions.map((position) => selectionFrom(parsed, position));
  });
  connection.languages.semanticTokens.on(({ textDocument }) => {
    const parsed = find(textDocument.uri);
    return parsed === undefined ? { data: [] } : tokenData(parsed, semanticTokens(parsed));
  });
  connection.languages.semanticTokens.onRange(({ textDocument, range }) => {
    const parsed = find(textDocument.uri);
    return parsed === undefined ? { data: [] } : tokenData(parsed, semanticTokens(parsed, stretchIn(parsed, range)));
  });
}

function selectionFrom(parsed: ParsedFile, position: Position): SelectionRange {
  const ranges = selectionAt(parsed, parsed.lines.offsetAt(position)).map((range) => rangeIn(parsed, range));
  const selection = ranges.reduceRight<SelectionRange | undefined>(
    (parent, range) => (parent === undefined ? { range } : { range, parent }),
    undefined,
  );
  return selection ?? { range: { start: position, end: position } };
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
