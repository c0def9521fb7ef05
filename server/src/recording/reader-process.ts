/** Has a log read by the program of its own, from wherever Node runs. */
import type { RecordingAnswer } from '../evaluate/recorded/answer.ts';
import type { RecordingMessage, RecordingRequest } from './messages.ts';

export interface ReaderOptions {
  /** Path of the program, `recording.js`. */
  readonly program: string;
  onProgress(share: number): void;
  /** Ends the reading; its answer is a problem then. */
  readonly signal?: AbortSignal;
}

export async function readInProcess(request: RecordingRequest, options: ReaderOptions): Promise<RecordingAnswer> {
  const { fork } = await import('node:child_process'); // not at the start: the extension also runs where there is no Node
  const child = fork(options.program, {
    env: { ...process.env, ELECTRON_RUN_AS_NODE: '1' }, // else an editor on the desk would start itself once more
    execArgv: [],
    stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
  });
  const end = (): boolean => child.kill('SIGKILL');
  options.signal?.addEventListener('abort', end);
  if (options.signal?.aborted === true) end();
  return new Promise((resolve) => {
    const answerWith = (answer: RecordingAnswer): void => {
      options.signal?.removeEventListener('abort', end);
      resolve(answer);
    };
    child.on('message', (message: RecordingMessage) => {
      if (message.kind === 'progress') options.onProgress(message.share);
      else answerWith(message.answer);
    });
    child.on('error', () => answerWith(problem('The program that reads recordings does not start.')));
    child.on('close', () => answerWith(problem(endOf(options.signal))));
    child.send(request, () => undefined); // what fails here is told by 'close'
  });
}

function endOf(signal: AbortSignal | undefined): string {
  return signal?.aborted === true
    ? 'The reading of the recording was cancelled.'
    : 'The program that reads recordings ended before it was done.';
}

function problem(sentence: string): RecordingAnswer {
  return { kind: 'problem', sentence };
}
