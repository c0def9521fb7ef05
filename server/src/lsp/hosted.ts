/**
 * The server as the extension runs it: in a web worker, or in a child process of Node. It is one program for both, so
 * that the extension need not carry it twice, and therefore uses nothing that Node alone has built in.
 */
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import type { FileAccess } from './file-access.ts';
import { startServer } from './server.ts';

/** What a worker has by itself. */
interface Channel {
  onmessage: ((event: { readonly data: unknown }) => void) | null;
  postMessage(message: unknown): void;
  addEventListener(type: 'error', listener: (error: Error) => void): void;
  close(): void;
}

/** The extension reads files for the server. */
const NO_OTHER_ACCESS: FileAccess = { findFiles: async () => [], readFile: async () => undefined };

const isChildProcess = typeof process !== 'undefined' && process.send !== undefined;
const channel = isChildProcess ? channelToParent() : (globalThis as unknown as Channel);
const connection = createConnection(new BrowserMessageReader(channel), new BrowserMessageWriter(channel));
connection.onExit(() => channel.close());
startServer(connection, () => NO_OTHER_ACCESS);

/** Without its channel the process has nobody to serve: it ends with the editor, even if that ends without a word. */
function channelToParent(): Channel {
  const channel: Channel = {
    onmessage: null,
    postMessage: (message) => process.send?.(message),
    addEventListener: (type, listener) => process.on(type, listener),
    close: () => process.disconnect(),
  };
  process.on('disconnect', () => process.exit());
  process.on('message', (data) => channel.onmessage?.({ data }));
  return channel;
}
