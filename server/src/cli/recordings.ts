/** Has recordings read for the command line, with progress on a terminal. */
import { dirname, resolve } from 'node:path';
import { filePath, fileUri } from '../analysis/file-location.ts';
import type { Workspace } from '../analysis/workspace.ts';
import type { RecordingAnswer } from '../evaluate/recorded/answer.ts';
import { readAsInstalled } from '../recording/installed-reader.ts';
import type { ReadRequest } from '../recording/source/read-log.ts';
import { shownPath } from './load.ts';

export async function readRecording(request: ReadRequest, trustDetection: boolean): Promise<RecordingAnswer> {
  const { stderr } = process;
  const show = (text: string): void => {
    if (stderr.isTTY) stderr.write(`\r\u001b[K${text}`);
  };
  const onProgress = (share: number): void => show(`reading ${shownPath(request.path)}: ${Math.floor(share * 100)} %`);
  const answer = await readAsInstalled({ ...request, trustDetection }, { onProgress });
  show('');
  return answer;
}

/** A recording that could not be read, and why. */
export interface UnreadRecording {
  readonly path: string;
  readonly sentence: string;
}

/** Reads the recordings that visits name, one after another, into the workspace. @param paths of files */
export async function readRecordings(
  workspace: Workspace,
  paths: readonly string[],
): Promise<readonly UnreadRecording[]> {
  const unread: UnreadRecording[] = [];
  for (const visitPath of paths) {
    const visit = fileUri(visitPath);
    const recording = workspace.recordingOf(visit);
    if (recording === undefined) continue;
    const { log, columns, basis, key } = recording;
    const path = resolve(dirname(filePath(visit)), log.value);
    const answer = await readRecording({ path, columns, basis }, false);
    workspace.setRecording(visit, { key, answer });
    if (answer.kind === 'problem') unread.push({ path, sentence: answer.sentence });
  }
  return unread;
}

/** One line for each reason, whatever the number of recordings: what was not read was not checked. */
export function tellUnread(unread: readonly UnreadRecording[]): void {
  const sentences = new Set(unread.map(({ sentence }) => sentence));
  for (const sentence of sentences) {
    const paths = unread.filter((each) => each.sentence === sentence).map(({ path }) => shownPath(path));
    const [first, ...others] = paths;
    const which = others.length === 0 ? `${first} was` : `${first} and ${others.length} more were`;
    process.stderr.write(`dewright: the recording ${which} not read. ${sentence}\n`);
  }
}
