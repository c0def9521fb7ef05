/** A language server as a child process, spoken to over standard input and output as an editor does. */
import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import {
  createMessageConnection,
  type MessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-jsonrpc/node';

export interface Server {
  readonly connection: MessageConnection;
  /** Resident memory in MB. */
  memory(): number;
  stop(): Promise<void>;
}

interface StartOptions {
  /** Flags of Node, the program and its words. */
  readonly command: readonly string[];
  readonly folder: string;
  readonly pulls: boolean;
  /** Answers `workspace/configuration`, by section. */
  readonly configuration?: (section: string) => unknown;
  readonly settings?: unknown;
}

export async function startServer({ command, folder, pulls, configuration, settings }: StartOptions): Promise<Server> {
  const child: ChildProcessWithoutNullStreams = spawn(process.execPath, [...command], { stdio: 'pipe' });
  const connection = createMessageConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  connection.onRequest('workspace/configuration', ({ items }: { items: { section: string }[] }) =>
    items.map(({ section }) => configuration?.(section) ?? null),
  );
  connection.onRequest('client/registerCapability', () => null);
  connection.onRequest('workspace/diagnostic/refresh', () => null);
  connection.onUnhandledNotification(() => undefined);
  connection.listen();
  await connection.sendRequest('initialize', {
    processId: process.pid,
    rootUri: folder,
    workspaceFolders: [{ uri: folder, name: 'bench' }],
    capabilities: {
      textDocument: {
        ...(pulls ? { diagnostic: {} } : {}),
        publishDiagnostics: { relatedInformation: true },
        synchronization: {},
        hover: { contentFormat: ['markdown'] },
        completion: { completionItem: { snippetSupport: true } },
        codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } },
      },
      workspace: { configuration: true, didChangeConfiguration: { dynamicRegistration: true } },
    },
  });
  await connection.sendNotification('initialized', {});
  if (settings !== undefined) await connection.sendNotification('workspace/didChangeConfiguration', { settings });
  return {
    connection,
    memory: () => Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${child.pid}/status`, 'utf8'))?.[1] ?? 0) / 1024,
    stop: async () => {
      await connection.sendRequest('shutdown').catch(() => undefined);
      connection.dispose();
      child.kill();
    },
  };
}

/** One open document with its version and text. */
export class OpenDocument {
  readonly #server: Server;
  readonly uri: string;
  #version = 1;
  readonly #lines: string[];

  constructor(server: Server, uri: string, languageId: string, text: string) {
    this.#server = server;
    this.uri = uri;
    this.#lines = text.split('\n');
    void server.connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId, version: 1, text },
    });
  }

  get text(): string {
    return this.#lines.join('\n');
  }

  /** Replaces a stretch of one line, as typing does. */
  async edit(line: number, start: number, end: number, newText: string): Promise<void> {
    this.#version += 1;
    const range = { start: { line, character: start }, end: { line, character: end } };
    const old = this.#lines[line] ?? '';
    this.#lines.splice(line, 1, ...(old.slice(0, start) + newText + old.slice(end)).split('\n'));
    await this.#server.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri: this.uri, version: this.#version },
      contentChanges: [{ range, text: newText }],
    });
  }
}
