/** Has a log read by what is installed with the command line, for it and for the server that it starts. */
import { join } from 'node:path';
import type { RecordingAnswer } from '../evaluate/recorded/answer.ts';
import type { RecordingRequest } from './messages.ts';
import { type ReaderOptions, readInProcess } from './reader-process.ts';

/** The folder of the package: DuckDB is installed with it, and native code from elsewhere is not loaded. */
const OWN_FOLDER = join(__dirname, '..', '..');

export function readAsInstalled(
  request: Omit<RecordingRequest, 'duckdbFolders'>,
  options: Omit<ReaderOptions, 'program'>,
): Promise<RecordingAnswer> {
  return readInProcess(
    { ...request, duckdbFolders: [OWN_FOLDER] },
    { ...options, program: join(__dirname, 'recording.js') },
  );
}
