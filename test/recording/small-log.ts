/** Reads small logs that a test writes, with the DuckDB of the project; without it these tests have nothing to read with. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, onTestFinished } from 'vitest';
import type { NamedColumns, RecordingAnswer } from '../../server/src/evaluate/recorded/answer.ts';
import type { RecordingBasis, RecordingSummary } from '../../server/src/evaluate/recorded/summary.ts';
import { loadDuckDB } from '../../server/src/recording/source/duckdb.ts';
import { readLog } from '../../server/src/recording/source/read-log.ts';

const DUCKDB = loadDuckDB([process.cwd()]);

export const describeWithDuckDB = describe.skipIf(!DUCKDB.ok);

export function duckdb() {
  if (!DUCKDB.ok) throw new Error(DUCKDB.problem);
  return DUCKDB.value;
}

/** A kiln at 101.325 kPa, 50 to 70 °C and 30 to 80 %RH, with one sensor heated by 6 K. */
export const BASIS: RecordingBasis = {
  space: 'kiln',
  pressure: 101_325,
  envelopes: [
    {
      bounds: [
        { quantity: 'air-temperature', low: 50, high: 70 },
        { quantity: 'relative-humidity', low: 0.3, high: 0.8 },
      ],
    },
  ],
  rises: [0, 6],
  sensorHumidityLimit: 0.8,
  unheatedHumidityLimit: 0.9,
};

/** An empty folder that goes when the test is over. */
export function logFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'dewright-log-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export function writeLog(content: string | Uint8Array, name = 'log.csv'): string {
  const path = join(logFolder(), name);
  writeFileSync(path, content);
  return path;
}

export interface Reading {
  readonly columns?: NamedColumns;
  readonly basis?: RecordingBasis;
  readonly trustDetection?: boolean;
  readonly onProgress?: (share: number) => void;
}

export function answerOf(
  path: string,
  { columns, basis = BASIS, trustDetection = true, onProgress = () => {} }: Reading = {},
): Promise<RecordingAnswer> {
  return readLog({ path, columns, basis }, { duckdb: duckdb(), trustDetection, onProgress });
}

export async function summaryOf(content: string | Uint8Array, reading: Reading = {}): Promise<RecordingSummary> {
  const answer = await answerOf(writeLog(content), reading);
  if (answer.kind !== 'summary') throw new Error(JSON.stringify(answer));
  return answer.summary;
}

export async function sentenceOf(content: string | Uint8Array, reading: Reading = {}): Promise<string> {
  const answer = await answerOf(writeLog(content), reading);
  if (answer.kind === 'problem') return answer.sentence;
  return answer.kind === 'columns' ? answer.detected.doubts.join(' ') : 'it was read';
}
