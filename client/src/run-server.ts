/**
 * Runs the language server: in a child process where the editor has Node, in a web worker where it has not. Messages
 * travel as a worker's do either way, so that the extension is one program for both, and the server is another.
 */
import type { ChildProcess, Serializable } from 'node:child_process';
import { type Uri, workspace } from 'vscode';
import { BrowserMessageReader, BrowserMessageWriter, type MessageTransports } from 'vscode-languageclient/browser';
import { SERVER_FLAGS } from './server-flags.ts';

export interface RunningServer extends MessageTransports {
  /** At once, and without a word. */
  end(): void;
}

/** What a worker has by itself. */
interface Channel {
  onmessage: ((event: { readonly data: unknown }) => void) | null;
  postMessage(message: Serializable): void;
  addEventListener(type: 'error', listener: (error: Error) => void): void;
}

/** Browsers have it; the types of Node do not know it. */
declare const Worker: new (address: string) => Channel & { terminate(): void };

export const HAS_NODE = typeof process !== 'undefined' && process.versions?.node !== undefined;

/** @param log takes what the server writes when it breaks down */
export function runServer(program: Uri, log: (text: string) => void): Promise<RunningServer> {
  return HAS_NODE ? runInChildProcess(program, log) : runInWorker(program);
}

async function runInChildProcess(program: Uri, log: (text: string) => void): Promise<RunningServer> {
  const { fork } = await import('node:child_process');
  const child = fork(program.fsPath, {
    env: { ...process.env, ELECTRON_RUN_AS_NODE: '1' }, // else an editor on the desk would start itself once more
    execArgv: [...SERVER_FLAGS], // and none of the extension's own: its debugger keeps its port
    stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
  });
  child.stderr?.on('data', (text) => log(String(text)));
  const channel = channelTo(child);
  const reader = new ChildProcessReader(channel, child);
  const end = (): void => {
    reader.dispose(); // an end that is wanted is no reason to start again
    child.kill('SIGKILL');
  };
  return { reader, writer: new BrowserMessageWriter(channel), end };
}

function channelTo(child: ChildProcess): Channel {
  const channel: Channel = {
    onmessage: null,
    postMessage: (message) => child.send(message, () => undefined), // what fails here is told by 'close'
    addEventListener: (type, listener) => child.on(type, listener),
  };
  child.on('message', (data) => channel.onmessage?.({ data }));
  return channel;
}

/** Tells the client that the server has ended, as no worker can; the client then starts it again. */
class ChildProcessReader extends BrowserMessageReader {
  constructor(channel: Channel, child: ChildProcess) {
    super(channel);
    child.on('close', () => this.fireClose());
  }
}

async function runInWorker(program: Uri): Promise<RunningServer> {
  const worker = new Worker(program.scheme === 'vscode-remote' ? await copyOf(program) : program.toString(true));
  const end = (): void => worker.terminate();
  return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker), end };
}

/** Browsers start no worker from the address of a remote machine, so the program is fetched first. */
async function copyOf(program: Uri): Promise<string> {
  return URL.createObjectURL(new Blob([await workspace.fs.readFile(program)]));
}
