/** Has recordings read for the command line, with progress on a terminal. */
import { join } from 'node:path';
import type { RecordingAnswer } from '../evaluate/recording-answer.ts';
import type { ReadRequest } from '../recording/read-log.ts';
import { readInProcess } from '../recording/reader-process.ts';

/** The folder of the package: DuckDB is installed with it, and native code from elsewhere is not loaded. */
const OWN_FOLDER = join(__dirname, '..', '..');

export async function readRecording(
  request: ReadRequest,
  name: string,
  trustDetection: boolean,
): Promise<RecordingAnswer> {
  const { stderr } = process;
  const show = (text: string): void => {
    if (stderr.isTTY) stderr.write(`\r\u001b[K${text}`);
  };
  const answer = await readInProcess(
    { ...request, trustDetection, duckdbFolders: [OWN_FOLDER] },
    {
      program: join(__dirname, 'recording.js'),
      onProgress: (share) => show(`reading ${name}: ${Math.floor(share * 100)} %`),
    },
  );
  show('');
  return answer;
}
