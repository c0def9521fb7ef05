/** Answers one request: from what was read before where nothing has changed, else by reading the log. */
import type { RecordingAnswer } from '../evaluate/recorded/answer.ts';
import { keepAnswer, keptAnswer, keyOf } from './kept-answers.ts';
import type { RecordingRequest } from './messages.ts';
import { loadDuckDB } from './source/duckdb.ts';
import { fileState, readLog } from './source/read-log.ts';

/** @param program the bytes of this program: another version of it may answer otherwise */
export async function answerRequest(
  request: RecordingRequest,
  program: Uint8Array,
  onProgress: (share: number) => void,
): Promise<RecordingAnswer> {
  const before = await fileState(request.path).catch(() => undefined);
  const key = await keyOf(request, program).catch(() => undefined);
  const known = key === undefined ? undefined : await keptAnswer(key);
  if (known !== undefined) return known;
  const duckdb = loadDuckDB(request.duckdbFolders);
  if (!duckdb.ok) return { kind: 'problem', sentence: duckdb.problem };
  const { trustDetection } = request;
  const answer = await readLog(request, { duckdb: duckdb.value, trustDetection, onProgress });
  if (key === undefined || answer.kind === 'problem') return answer;
  // What was replaced after its content was hashed is not kept under that hash.
  const after = await fileState(request.path).catch(() => undefined);
  if (before === after) await keepAnswer(key, answer);
  return answer;
}
