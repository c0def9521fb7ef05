/** How the server has a recording read: by the client where the client offers it, else in a process of its own. */
import type { CancellationToken, Connection } from 'vscode-languageserver';
import type { NamedColumns, RecordingAnswer } from '../evaluate/recorded/answer.ts';
import type { RecordingBasis } from '../evaluate/recorded/summary.ts';

export interface RecordingQuestion {
  /** URI of the log. */
  readonly log: string;
  readonly columns?: NamedColumns | undefined;
  readonly basis: RecordingBasis;
}

export type RecordingReader = (
  question: RecordingQuestion,
  onProgress: (share: number) => void,
  token: CancellationToken,
) => Promise<RecordingAnswer>;

export const READS_NO_RECORDINGS: RecordingReader = async () => ({
  kind: 'problem',
  sentence: 'This editor reads no recordings.',
});

/** One recording is read at a time, so that its progress needs no name. */
export function readerThroughClient(connection: Connection): RecordingReader {
  let tell: (share: number) => void = () => undefined;
  connection.onNotification('dewright/recordingProgress', ({ share }: { readonly share: number }) => tell(share));
  return async (question, onProgress, token) => {
    tell = onProgress;
    const answer = connection.sendRequest<RecordingAnswer>('dewright/readRecording', question, token);
    return answer.catch(() => ({ kind: 'problem', sentence: 'The reading of the recording was cancelled.' }) as const);
  };
}
