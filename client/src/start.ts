/** Starts the language client, and what the extension adds to it, in whichever way the editor runs the server. */
import { commands, type ExtensionContext } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { showFileStatus } from './file-status.ts';
import { answerFileRequests } from './files.ts';
import { offerNewSite } from './new-site.ts';
import { offerPack } from './pack.ts';
import { answerRecordingRequests } from './recordings.ts';
import { showRulePages } from './rule-pages.ts';
import { offerViews } from './views/views.ts';

let running: BaseLanguageClient | undefined;

export function start(context: ExtensionContext, client: BaseLanguageClient): void {
  running = client;
  context.subscriptions.push(
    ...answerFileRequests(client),
    ...answerRecordingRequests(client, context.extensionUri),
    ...showRulePages(client),
    ...showFileStatus(client),
    ...offerNewSite(client),
    ...offerPack(client),
    ...offerViews(client, context.extensionUri),
    commands.registerCommand('dewright.restart', async () => {
      await client.stop().catch(() => undefined); // one that hangs does not answer, and is ended by the start
      await client.start();
    }),
    commands.registerCommand('dewright.showOutput', () => client.outputChannel.show()),
  );
  void client.start(); // the editor need not wait: requests wait by themselves
}

export function stop(): Promise<void> | undefined {
  return running?.stop();
}
