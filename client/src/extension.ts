/** The extension, one program for editors with Node and for those that run in a browser. */
import { type ExtensionContext, Uri } from 'vscode';
import { Client } from './client.ts';
import { clientOptions, SERVER_PROGRAM } from './client-options.ts';
import { start } from './start.ts';

export { stop as deactivate } from './start.ts';

export function activate(context: ExtensionContext): void {
  const program = Uri.joinPath(context.extensionUri, SERVER_PROGRAM);
  const client = new Client(program, clientOptions(context));
  context.subscriptions.push({ dispose: () => client.endServer() });
  start(context, client);
}
