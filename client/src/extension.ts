/** The extension where the editor has Node: starts the language server as a child process. */
import { commands, type ExtensionContext } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { clientOptions } from './client-options.ts';
import { answerFileRequests } from './files.ts';
import { showRulePages } from './rule-pages.ts';

let client: LanguageClient | undefined;

export async function activate(context: ExtensionContext): Promise<void> {
  const server = { module: context.asAbsolutePath('server/dist/server.js'), transport: TransportKind.ipc };
  const started = new LanguageClient('dewright', 'Dewright', server, clientOptions(context));
  client = started;
  context.subscriptions.push(
    ...answerFileRequests(started),
    ...showRulePages(started),
    commands.registerCommand('dewright.restart', () => started.restart()),
    commands.registerCommand('dewright.showOutput', () => started.outputChannel.show()),
  );
  await started.start();
}

export function deactivate(): Promise<void> | undefined {
  return client?.stop();
}
