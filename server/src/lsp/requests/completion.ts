/** Completion in the terms of the protocol. */
import { CompletionItem, CompletionItemKind, InsertTextFormat, InsertTextMode } from 'vscode-languageserver';
import { completionsAt } from '../../features/writing/completion/completion.ts';
import {
  type CompletionKind,
  type CompletionItem as Offer,
  plainText,
  snippetText,
} from '../../features/writing/completion/completion-item.ts';
import { rangeIn } from '../protocol.ts';
import type { Served } from '../served.ts';

const KINDS: Readonly<Record<CompletionKind, CompletionItemKind>> = {
  key: CompletionItemKind.Property,
  word: CompletionItemKind.EnumMember,
  unit: CompletionItemKind.Unit,
  value: CompletionItemKind.Value,
  quantity: CompletionItemKind.Field,
  reference: CompletionItemKind.Reference,
  model: CompletionItemKind.Class,
  file: CompletionItemKind.File,
  snippet: CompletionItemKind.Snippet,
};

export function serveCompletion({ connection, client, workspace, analysisOf }: Served): void {
  connection.onCompletion(async ({ textDocument, position }) => {
    const analysis = await analysisOf(textDocument.uri);
    if (analysis === undefined) return [];
    const { parsed } = analysis;
    const { range, items } = completionsAt(workspace, analysis, parsed.lines.offsetAt(position));
    const replaced = rangeIn(parsed, range);
    return items.map((offer, order) => {
      const item = CompletionItem.create(offer.label);
      item.kind = KINDS[offer.kind];
      item.sortText = String(order).padStart(4, '0');
      item.textEdit = {
        range: replaced,
        newText: client.takesSnippets ? snippetText(offer.insert) : plainText(offer.insert),
      };
      item.insertTextFormat = client.takesSnippets ? InsertTextFormat.Snippet : InsertTextFormat.PlainText;
      item.insertTextMode = InsertTextMode.adjustIndentation;
      return Object.assign(item, described(offer), client.isOurs && offer.asksNext === true ? CHOOSE_NEXT : {});
    });
  });
}

/** A command of the editor itself. */
const CHOOSE_NEXT = { command: { title: 'Choose the value', command: 'editor.action.triggerSuggest' } };

function described({ detail, documentation }: Offer): Partial<CompletionItem> {
  return {
    ...(detail === undefined ? {} : { detail }),
    ...(documentation === undefined || documentation === ''
      ? {}
      : { documentation: { kind: 'markdown', value: documentation } }),
  };
}
