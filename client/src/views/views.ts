/** The views beside a file: one panel of each kind, which follows the active editor and its cursor. */
import {
  commands,
  type Disposable,
  languages,
  Position,
  Selection,
  type TextEditor,
  Uri,
  ViewColumn,
  type WebviewOptions,
  type WebviewPanel,
  window,
  workspace,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { LANGUAGES } from '../client-options.ts';
import type { PageState } from './messages.ts';
import { type ViewKind, viewKinds } from './view-kinds.ts';
import { PAGE_SCRIPTS } from './view-page.ts';
import { fillPanel, type ViewPanel } from './view-panel.ts';
import { subjectAtFirst, subjectOf, type ViewSubject } from './view-subject.ts';

export function offerViews(client: BaseLanguageClient, extension: Uri): Disposable[] {
  return viewKinds().flatMap((kind) => offerView(kind, client, extension));
}

function offerView(kind: ViewKind, client: BaseLanguageClient, extension: Uri): Disposable[] {
  const type = `dewright.${kind.name}`;
  const options: WebviewOptions = {
    enableScripts: true,
    localResourceRoots: [Uri.joinPath(extension, PAGE_SCRIPTS)],
  };
  let open: ViewPanel | undefined;

  const fill = (panel: WebviewPanel, subject: ViewSubject | undefined): void => {
    open = fillPanel(kind, panel, extension, client, subject);
    panel.onDidDispose(() => {
      open = undefined;
    });
  };
  /** @param at where the cursor is moved to first, as by a lens */
  const show = (at?: { readonly line: number; readonly character: number }): void => {
    const editor = window.activeTextEditor;
    if (at !== undefined && editor !== undefined) {
      const position = new Position(at.line, at.character);
      editor.selection = new Selection(position, position);
    }
    const subject = subjectAtFirst(kind);
    if (open === undefined) {
      const place = { viewColumn: ViewColumn.Beside, preserveFocus: true };
      fill(window.createWebviewPanel(type, kind.title, place, options), subject);
      return;
    }
    if (subject !== undefined) open.follow(subject);
    open.reveal();
  };
  const restore = async (panel: WebviewPanel, state: PageState | undefined): Promise<void> => {
    panel.webview.options = options;
    const uri = state?.uri === undefined ? undefined : Uri.parse(state.uri);
    const atStart = uri === undefined ? undefined : { uri, position: new Position(0, 0) };
    fill(panel, subjectAtFirst(kind) ?? atStart);
  };
  const follow = (editor: TextEditor | undefined): void => {
    const subject = subjectOf(editor, kind);
    if (subject !== undefined) open?.follow(subject);
  };
  return [
    commands.registerCommand(kind.command, show),
    window.registerWebviewPanelSerializer(type, { deserializeWebviewPanel: restore }),
    window.onDidChangeActiveTextEditor(follow),
    window.onDidChangeTextEditorSelection(({ textEditor }) => follow(textEditor)),
    workspace.onDidChangeTextDocument(({ document }) => {
      if (LANGUAGES.includes(document.languageId)) open?.refresh();
    }),
    languages.onDidChangeDiagnostics(() => open?.refresh()), // also where a file changed that is not open
  ];
}
