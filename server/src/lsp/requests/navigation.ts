/** Going to names and places, renaming, and files that move, in the terms of the protocol. */
import {
  DocumentHighlightKind,
  type Location,
  type LocationLink,
  LSPErrorCodes,
  type Range,
  ResponseError,
} from 'vscode-languageserver';
import type { ParsedFile } from '../../analysis/parsed-file.ts';
import type { TextRange } from '../../base/text-range.ts';
import { definitionAt, fileLinks, highlightsAt, referencesAt } from '../../features/moving/definition.ts';
import { editsForMoves } from '../../features/moving/moved-files.ts';
import { prepareRename, rename } from '../../features/moving/rename.ts';
import { SHOW_PLACE } from '../client.ts';
import { rangeIn, workspaceEditOf } from '../protocol.ts';
import type { Served } from '../served.ts';

export function serveNavigation({ connection, workspace, analysisOf, find }: Served): void {
  const parsedOf = async (uri: string): Promise<ParsedFile | undefined> => (await analysisOf(uri))?.parsed;
  const locationIn = (file: string, range: TextRange): readonly Location[] => {
    const parsed = find(file);
    return parsed === undefined ? [] : [{ uri: file, range: rangeIn(parsed, range) }];
  };

  connection.onDefinition(async ({ textDocument, position }): Promise<LocationLink[]> => {
    const parsed = await parsedOf(textDocument.uri);
    const found = parsed && definitionAt(workspace, parsed, parsed.lines.offsetAt(position));
    if (parsed === undefined || found === undefined) return [];
    return locationIn(found.file, found.range).map(({ uri, range }) => ({
      originSelectionRange: rangeIn(parsed, found.from),
      targetUri: uri,
      targetRange: range,
      targetSelectionRange: range,
    }));
  });
  connection.onReferences(async ({ textDocument, position, context }) => {
    const parsed = await parsedOf(textDocument.uri);
    if (parsed === undefined) return [];
    const places = referencesAt(workspace, parsed, parsed.lines.offsetAt(position), context.includeDeclaration);
    return places.flatMap(({ file, range }) => locationIn(file, range));
  });
  connection.onDocumentHighlight(async ({ textDocument, position }) => {
    const parsed = await parsedOf(textDocument.uri);
    if (parsed === undefined) return [];
    return highlightsAt(workspace, parsed, parsed.lines.offsetAt(position)).map(({ range, role }) => ({
      range: rangeIn(parsed, range),
      kind: role === 'definition' ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
    }));
  });
  connection.onDocumentLinks(async ({ textDocument }) => {
    const parsed = await parsedOf(textDocument.uri);
    if (parsed === undefined) return [];
    return fileLinks(parsed).map(({ range, target, tooltip }) => ({ range: rangeIn(parsed, range), target, tooltip }));
  });
  connection.onPrepareRename(async ({ textDocument, position }) => {
    const parsed = await parsedOf(textDocument.uri);
    if (parsed === undefined) return null;
    const place = prepareRename(workspace, parsed, parsed.lines.offsetAt(position));
    if (!place.ok) return refusal(place.problem);
    return { range: rangeIn(parsed, place.value.range), placeholder: place.value.name };
  });
  connection.onRenameRequest(async ({ textDocument, position, newName }) => {
    const parsed = await parsedOf(textDocument.uri);
    if (parsed === undefined) return null;
    const edits = rename(workspace, parsed, parsed.lines.offsetAt(position), newName.trim());
    return edits.ok ? workspaceEditOf(edits.value, find) : refusal(edits.problem);
  });
  connection.workspace.onWillRenameFiles(({ files }) => {
    const moves = files.map(({ oldUri, newUri }) => ({ from: oldUri, to: newUri }));
    return workspaceEditOf(editsForMoves(workspace, moves), find);
  });
  connection.onExecuteCommand(async ({ command, arguments: [uri, selection] = [] }) => {
    if (command !== SHOW_PLACE) return;
    await connection.window.showDocument({ uri: uri as string, selection: selection as Range, takeFocus: true });
  });
}

/** Editors show the words of a failed request to whoever asked. */
function refusal(words: string): ResponseError {
  return new ResponseError(LSPErrorCodes.RequestFailed, words);
}
