/** The extension where the editor has Node: starts the language server as a child process. */
import { type ExtensionContext, Uri } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { clientOptions, SERVER_PROGRAM } from './client-options.ts';
import { start } from './start.ts';

export { stop as deactivate } from './start.ts';

export function activate(context: ExtensionContext): void {
  const module = Uri.joinPath(context.extensionUri, SERVER_PROGRAM).fsPath;
  const server = { module, transport: TransportKind.ipc };
  start(context, new LanguageClient('dewright', 'Dewright', server, clientOptions(context)));
}
