/** Small steps over the editor's API, for the suite inside the extension host. */
import * as vscode from 'vscode';

export const SITE_FILE = 'fennmoor.dewsite.yaml';
export const KIT_FILE = 'kits/fennmoor.dewkit.yaml';

const PATIENCE = 60_000;
const BETWEEN_LOOKS = 50;

export function extension(): vscode.Extension<unknown> {
  const found = vscode.extensions.getExtension('dewright.dewright');
  if (found === undefined) throw new Error('the extension is not there');
  return found;
}

/** The path of a file in the workspace. */
export function pathOf(uri: vscode.Uri): string {
  return vscode.workspace.asRelativePath(uri, false);
}

export function workspaceFile(path: string): vscode.Uri {
  const folder = vscode.workspace.workspaceFolders?.[0];
  if (folder === undefined) throw new Error('no folder is open');
  return vscode.Uri.joinPath(folder.uri, path);
}

/** Opens a file of the workspace as it is on disk. */
export async function open(path: string): Promise<vscode.TextDocument> {
  const document = await vscode.workspace.openTextDocument(workspaceFile(path));
  await vscode.window.showTextDocument(document);
  if (document.isDirty) await vscode.commands.executeCommand('workbench.action.files.revert');
  return document;
}

/** Waits for a finding of a rule. */
export function findingOf({ uri }: { readonly uri: vscode.Uri }, rule: string): Promise<vscode.Diagnostic> {
  return until(`a finding of ${rule}`, () => findingsOf(uri, rule)[0]);
}

export function noFindingOf({ uri }: { readonly uri: vscode.Uri }, rule: string): Promise<true> {
  return until(`no finding of ${rule}`, () => findingsOf(uri, rule).length === 0 || undefined);
}

function findingsOf(uri: vscode.Uri, rule: string): vscode.Diagnostic[] {
  return vscode.languages.getDiagnostics(uri).filter((finding) => ruleOf(finding) === rule);
}

function ruleOf({ code }: vscode.Diagnostic): unknown {
  return typeof code === 'object' ? code.value : code;
}

export function codeActions(
  document: vscode.TextDocument,
  range: vscode.Range,
  kind: string,
): Thenable<vscode.CodeAction[]> {
  return ask(document, 'executeCodeActionProvider', range, kind);
}

/** Asks the editor what its providers say of a document: `ask(site, 'executeHoverProvider', position)`. */
export function ask<Answer>(document: vscode.TextDocument, what: string, ...how: unknown[]): Thenable<Answer> {
  return vscode.commands.executeCommand<Answer>(`vscode.${what}`, document.uri, ...how);
}

/** Where the document first says this, or first after other words. */
export function placeOf(document: vscode.TextDocument, words: string, after = ''): vscode.Position {
  const text = document.getText();
  const offset = text.indexOf(words, text.indexOf(after));
  if (offset < 0) throw new Error(`nothing says “${words}”`);
  return document.positionAt(offset);
}

export function whole(document: vscode.TextDocument): vscode.Range {
  return new vscode.Range(0, 0, document.lineCount, 0);
}

export async function apply(action: vscode.CodeAction | undefined): Promise<void> {
  if (action?.edit === undefined) throw new Error('there is no code action with an edit');
  if (!(await vscode.workspace.applyEdit(action.edit))) throw new Error('the edit was refused');
}

/** Inserts a text and returns the place behind it. */
export async function type(document: vscode.TextDocument, at: vscode.Position, text: string): Promise<vscode.Position> {
  const edit = new vscode.WorkspaceEdit();
  edit.insert(document.uri, at, text);
  await vscode.workspace.applyEdit(edit);
  return document.positionAt(document.offsetAt(at) + text.length);
}

/** Changes a file on disk and returns what it held before. */
export async function rewrite(path: string, change: (text: string) => string): Promise<string> {
  const before = new TextDecoder().decode(await vscode.workspace.fs.readFile(workspaceFile(path)));
  await write(path, change(before));
  return before;
}

export async function write(path: string, text: string): Promise<void> {
  await vscode.workspace.fs.writeFile(workspaceFile(path), new TextEncoder().encode(text));
}

export async function exists(uri: vscode.Uri): Promise<boolean> {
  return vscode.workspace.fs.stat(uri).then(
    () => true,
    () => false,
  );
}

/** Compares what JSON can hold. */
export function equal(actual: unknown, expected: unknown): void {
  const [shown, wanted] = [JSON.stringify(actual), JSON.stringify(expected)];
  if (shown !== wanted) throw new Error(`expected ${wanted}, got ${shown}`);
}

export function matches(text: string, pattern: RegExp): void {
  if (!pattern.test(text)) throw new Error(`expected ${pattern} in ${JSON.stringify(text)}`);
}

export async function until<T>(what: string, look: () => T | undefined | Promise<T | undefined>): Promise<T> {
  const deadline = Date.now() + PATIENCE;
  for (;;) {
    const seen = await look();
    if (seen !== undefined) return seen;
    if (Date.now() > deadline) throw new Error(`waited in vain for ${what}`);
    await new Promise((resolve) => setTimeout(resolve, BETWEEN_LOOKS));
  }
}
