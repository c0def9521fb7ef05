/** Has recordings read in a process of Node, for editors whose client does not. */
import { join } from 'node:path';
import { filePath } from '../analysis/file-location.ts';
import { readInProcess } from '../recording/reader-process.ts';
import type { RecordingReader } from './recording-reader.ts';

/** The folder of the package: DuckDB is installed with it, and native code from elsewhere is not loaded. */
const OWN_FOLDER = join(__dirname, '..', '..');

export const readFromDisk: RecordingReader = ({ log, columns, basis }, onProgress, token) => {
  const cancelling = new AbortController();
  token.onCancellationRequested(() => cancelling.abort());
  return readInProcess(
    { path: filePath(log), columns, basis, trustDetection: false, duckdbFolders: [OWN_FOLDER] },
    { program: join(__dirname, 'recording.js'), onProgress, signal: cancelling.signal },
  );
};
