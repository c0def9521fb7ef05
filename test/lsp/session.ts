/** A server and an editor that talk to each other in this process. */
import { PassThrough } from 'node:stream';
import {
  type ClientCapabilities,
  createConnection,
  createProtocolConnection,
  type InitializeResult,
  type ProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { startServer } from '../../server/src/lsp/server.ts';

export interface Session {
  readonly editor: ProtocolConnection;
  readonly initialized: InitializeResult;
  open(uri: string, text: string): Promise<void>;
  /** Replaces the whole text of an open document. */
  change(uri: string, text: string): Promise<void>;
  end(): Promise<void>;
}

export interface SessionOptions {
  readonly files: Readonly<Record<string, string>>;
  readonly capabilities?: ClientCapabilities;
  /** True for the extension of this product, which reads files for the server. */
  readonly isOurs?: boolean;
  /** What the editor says of `dewright` where it is asked. */
  readonly settings?: unknown;
  /** How the editor answers what it is asked, by method, where that is not as usual. */
  readonly answers?: Readonly<Record<string, () => unknown>>;
}

const LANGUAGES: Readonly<Record<string, string>> = {
  dewsite: 'dewright-site',
  dewkit: 'dewright-kit',
  dewvisit: 'dewright-visit',
};

export async function startSession({
  files,
  capabilities = {},
  isOurs = false,
  settings,
  answers = {},
}: SessionOptions): Promise<Session> {
  const [toServer, toEditor] = [new PassThrough(), new PassThrough()];
  const server = createConnection(new StreamMessageReader(toServer), new StreamMessageWriter(toEditor));
  const access = {
    findFiles: async () => Object.keys(files),
    readFile: async (uri: string) => files[uri],
  };
  startServer(server, () => access);
  const editor = createProtocolConnection(new StreamMessageReader(toEditor), new StreamMessageWriter(toServer));
  editor.onRequest('dewright/findFiles', () => ({ uris: Object.keys(files) }));
  editor.onRequest('dewright/readFile', ({ uri }: { readonly uri: string }) => ({ text: files[uri] ?? null }));
  editor.onRequest('workspace/configuration', () => [settings]);
  editor.onRequest('client/registerCapability', () => null);
  for (const refresh of ['diagnostic', 'inlayHint', 'codeLens'])
    editor.onRequest(`workspace/${refresh}/refresh`, () => null);
  for (const [method, answer] of Object.entries(answers)) editor.onRequest(method, answer);
  editor.listen();
  const initialized = await editor.sendRequest<InitializeResult>('initialize', {
    processId: null,
    rootUri: null,
    capabilities,
    ...(isOurs ? { initializationOptions: { files: 'client' } } : {}),
  });
  await editor.sendNotification('initialized', {});
  const versions = new Map<string, number>();
  return {
    editor,
    initialized,
    async open(uri, text) {
      const languageId = LANGUAGES[/\.(dew\w+)\.yaml$/.exec(uri)?.[1] ?? ''] ?? '';
      versions.set(uri, 1);
      await editor.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId, version: 1, text } });
    },
    async change(uri, text) {
      const version = (versions.get(uri) ?? 0) + 1;
      versions.set(uri, version);
      await editor.sendNotification('textDocument/didChange', {
        textDocument: { uri, version },
        contentChanges: [{ text }],
      });
    },
    async end() {
      await editor.sendRequest('shutdown');
      editor.dispose();
      server.dispose();
    },
  };
}
