/** What comes back where a log was asked for: what it says, which columns it seems to have, or why it is not read. */
import type { RecordingSummary } from './summary.ts';

/** What a column of a log may hold: the keys of `log-columns`. */
export const LOG_COLUMN_KEYS = [
  'time',
  'air-temperature',
  'relative-humidity',
  'dew-point',
  'frost-point',
  'dew-point-depression',
  'wet-bulb',
  'vapour-pressure',
  'mixing-ratio',
  'absolute-humidity',
  'pressure',
  'speed',
] as const;

export type LogColumnKey = (typeof LOG_COLUMN_KEYS)[number];

/** Which column holds what. Where a column's name has no unit, `NAME in UNIT` gives it one. */
export type NamedColumns = Readonly<Partial<Record<LogColumnKey, string>>>;

export interface DetectedColumns {
  readonly columns: NamedColumns;
  /** Why that cannot be taken as it is: one sentence each. */
  readonly doubts: readonly string[];
}

export type RecordingAnswer =
  | { readonly kind: 'summary'; readonly summary: RecordingSummary; readonly detected?: DetectedColumns }
  /** Nobody has said yet which column holds what. */
  | { readonly kind: 'columns'; readonly detected: DetectedColumns }
  | { readonly kind: 'problem'; readonly sentence: string };
