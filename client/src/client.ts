/** The language client of the library, which starts the server by the one way or by the other. */
import type { Uri } from 'vscode';
import { BaseLanguageClient, type LanguageClientOptions, type MessageTransports } from 'vscode-languageclient/browser';
import { nextTurn } from '../../server/src/lsp/next-turn.ts';
import { type RunningServer, runServer } from './run-server.ts';

export class Client extends BaseLanguageClient {
  readonly #program: Uri;
  #server: RunningServer | undefined;

  constructor(program: Uri, options: LanguageClientOptions) {
    super('dewright', 'Dewright', options);
    this.#program = program;
  }

  /** Ends the server at once, for one that hangs does not end when it is asked. */
  endServer(): void {
    this.#server?.end();
  }

  async restart(): Promise<void> {
    await nextTurn(); // what is just being sent is sent, and does not fail for want of a server
    await this.stop().catch(() => undefined); // one that hangs does not answer, and is ended by the start
    await this.start();
  }

  protected override async createMessageTransports(): Promise<MessageTransports> {
    this.endServer();
    this.#server = await runServer(this.#program, (text) => this.outputChannel.error(text));
    return this.#server;
  }
}
