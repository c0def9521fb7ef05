/** The extension, one program for editors with Node and for those that run in a browser. */
import { commands, type ExtensionContext, Uri } from 'vscode';
import { Client } from './client.ts';
import { clientOptions, SERVER_PROGRAM } from './client-options.ts';
import { showFileStatus } from './file-status.ts';
import { answerFileRequests } from './files.ts';
import { offerNewSite } from './new-site.ts';
import { offerPack } from './pack.ts';
import { answerRecordingRequests } from './recordings.ts';
import { showRulePages } from './rule-pages.ts';
import { offerViews } from './views/views.ts';

let running: Client | undefined;

export function activate(context: ExtensionContext): void {
  const client = new Client(Uri.joinPath(context.extensionUri, SERVER_PROGRAM), clientOptions(context));
  running = client;
  context.subscriptions.push(
    { dispose: () => client.endServer() },
    ...answerFileRequests(client),
    ...answerRecordingRequests(client, context.extensionUri),
    ...showRulePages(client),
    ...showFileStatus(client),
    ...offerNewSite(client),
    ...offerPack(client),
    ...offerViews(client, context.extensionUri),
    commands.registerCommand('dewright.restart', () => client.restart()),
    commands.registerCommand('dewright.showOutput', () => client.outputChannel.show()),
  );
  void client.start(); // the editor need not wait: requests wait by themselves
}

export function deactivate(): Promise<void> | undefined {
  return running?.stop();
}
