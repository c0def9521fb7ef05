/** What a view is about: a file and the cursor in it. */
import { Position, Selection, type TextEditor, TextEditorRevealType, Uri, window, workspace } from 'vscode';
import type { ViewKind } from './view-kinds.ts';

export interface ViewSubject {
  readonly uri: Uri;
  readonly position: Position;
}

/** What a view of the whole workspace is about. */
const EVERYTHING: ViewSubject = { uri: Uri.parse('dewright:/'), position: new Position(0, 0) };

/** What a view is about that is opened now. */
export function subjectAtFirst(kind: ViewKind): ViewSubject | undefined {
  return kind.languages.length === 0 ? EVERYTHING : subjectOf(window.activeTextEditor, kind);
}

/** The active editor's, where it shows a file that the view is about. */
export function subjectOf(editor: TextEditor | undefined, { languages }: ViewKind): ViewSubject | undefined {
  if (editor === undefined || !languages.includes(editor.document.languageId)) return undefined;
  return { uri: editor.document.uri, position: editor.selection.active };
}

/** Moves the cursor to a place in a file, in the editor that shows it already or in the first column. */
export async function goTo(file: string, start: number): Promise<void> {
  const document = await workspace.openTextDocument(Uri.parse(file));
  const shown = window.visibleTextEditors.find((editor) => editor.document === document);
  const editor = await window.showTextDocument(document, { viewColumn: shown?.viewColumn ?? 1 });
  const position = document.positionAt(start);
  editor.selection = new Selection(position, position);
  editor.revealRange(editor.selection, TextEditorRevealType.InCenterIfOutsideViewport);
}
