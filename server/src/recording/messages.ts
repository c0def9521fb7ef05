/** What is said between the program that reads logs and whoever started it. */
import type { RecordingAnswer } from '../evaluate/recorded/answer.ts';
import type { ReadRequest } from './source/read-log.ts';

export interface RecordingRequest extends ReadRequest {
  /** Reads with the detected columns where they are clear and none were named. */
  readonly trustDetection: boolean;
  /** Where DuckDB is looked for, the first first. */
  readonly duckdbFolders: readonly string[];
}

export type RecordingMessage =
  | { readonly kind: 'progress'; readonly share: number }
  | { readonly kind: 'answer'; readonly answer: RecordingAnswer };
