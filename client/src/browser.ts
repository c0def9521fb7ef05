/** The extension where the editor runs in a browser: starts the language server as a web worker. */
import { type ExtensionContext, Uri, workspace } from 'vscode';
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
  type MessageTransports,
} from 'vscode-languageclient/browser';
import { clientOptions, SERVER_PROGRAM } from './client-options.ts';
import { start } from './start.ts';

export { stop as deactivate } from './start.ts';

/** Browsers have it; the types of Node do not know it. */
declare const Worker: new (address: string) => ConstructorParameters<typeof BrowserMessageReader>[0];

export function activate(context: ExtensionContext): void {
  const program = Uri.joinPath(context.extensionUri, SERVER_PROGRAM);
  const client = new LanguageClient('dewright', 'Dewright', () => startServer(program), clientOptions(context));
  start(context, client);
}

async function startServer(program: Uri): Promise<MessageTransports> {
  const worker = new Worker(program.scheme === 'vscode-remote' ? await copyOf(program) : program.toString(true));
  return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
}

/** Browsers start no worker from the address of a remote machine, so the program is fetched first. */
async function copyOf(program: Uri): Promise<string> {
  return URL.createObjectURL(new Blob([await workspace.fs.readFile(program)]));
}
