/** Small steps over the editor's API, for the suite inside the extension host. */
import * as vscode from 'vscode';

const PATIENCE = 20_000;
const BETWEEN_LOOKS = 50;

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
export function findingOf(document: vscode.TextDocument, rule: string): Promise<vscode.Diagnostic> {
  return until(`a finding of ${rule}`, () => findingsOf(document, rule)[0]);
}

export function noFindingOf(document: vscode.TextDocument, rule: string): Promise<true> {
  return until(`no finding of ${rule}`, () => findingsOf(document, rule).length === 0 || undefined);
}

function findingsOf(document: vscode.TextDocument, rule: string): vscode.Diagnostic[] {
  return vscode.languages.getDiagnostics(document.uri).filter((finding) => ruleOf(finding) === rule);
}

function ruleOf({ code }: vscode.Diagnostic): unknown {
  return typeof code === 'object' ? code.value : code;
}

export function codeActions(
  document: vscode.TextDocument,
  range: vscode.Range,
  kind: string,
): Thenable<vscode.CodeAction[]> {
  return vscode.commands.executeCommand('vscode.executeCodeActionProvider', document.uri, range, kind);
}

/** The text of the hovers at the first place where the document says this. */
export async function hoverText(document: vscode.TextDocument, words: string): Promise<string> {
  const position = document.positionAt(document.getText().indexOf(words));
  const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
    'vscode.executeHoverProvider',
    document.uri,
    position,
  );
  const parts = hovers.flatMap((hover) => hover.contents);
  return parts.map((part) => (typeof part === 'string' ? part : part.value)).join('\n');
}

export async function apply(action: vscode.CodeAction | undefined): Promise<void> {
  if (action?.edit === undefined) throw new Error('there is no code action with an edit');
  if (!(await vscode.workspace.applyEdit(action.edit))) throw new Error('the edit was refused');
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

async function until<T>(what: string, look: () => T | undefined): Promise<T> {
  const deadline = Date.now() + PATIENCE;
  for (;;) {
    const seen = look();
    if (seen !== undefined) return seen;
    if (Date.now() > deadline) throw new Error(`waited in vain for ${what}`);
    await new Promise((resolve) => setTimeout(resolve, BETWEEN_LOOKS));
  }
}
