/** Has recordings read in a process of Node, for editors whose client does not. */
import { filePath } from '../analysis/file-location.ts';
import { readAsInstalled } from '../recording/installed-reader.ts';
import { isInside } from './disk-access.ts';
import type { RecordingReader } from './recording-reader.ts';

/** @param folders absolute paths of the workspace folders, outside of which nothing is read */
export function readerFromDisk(folders: readonly string[]): RecordingReader {
  return async ({ log, columns, basis }, onProgress, token) => {
    const path = filePath(log);
    const mayBeRead = await isInside(folders, path).catch(() => true); // one that is not there is told of as such
    if (!mayBeRead) return { kind: 'problem', sentence: 'Recordings outside the workspace are not read.' };
    const cancelling = new AbortController();
    token.onCancellationRequested(() => cancelling.abort());
    return readAsInstalled({ path, columns, basis, trustDetection: false }, { onProgress, signal: cancelling.signal });
  };
}
