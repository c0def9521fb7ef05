/** Reads one log in bounded memory: opens it, settles which columns hold what, and sums its rows up. */
import { stat } from 'node:fs/promises';
import type { DuckDBConnection, DuckDBDataChunk } from '@duckdb/node-api';
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import type { NamedColumns, RecordingAnswer } from '../../evaluate/recorded/answer.ts';
import type { RecordingBasis, RecordingSummary } from '../../evaluate/recorded/summary.ts';
import { type ChosenColumns, chooseColumns, usedColumns } from '../dialect/chosen-columns.ts';
import { detectColumns } from '../dialect/detect-columns.ts';
import { RecordingFold, type RowChunk } from '../fold/recording-fold.ts';
import type { DuckDBLibrary } from './duckdb.ts';
import { canonicalNumber, type OpenLog, openLog, orNaN } from './open-log.ts';

export interface ReadRequest {
  /** Absolute path of the log. */
  readonly path: string;
  /** Absent where nobody has said yet which column holds what. */
  readonly columns: NamedColumns | undefined;
  readonly basis: RecordingBasis;
}

export interface ReadOptions {
  readonly duckdb: DuckDBLibrary;
  /** Reads with the detected columns where they are clear and none were named. */
  readonly trustDetection: boolean;
  /** @param share of the rows, from 0 to 1 */
  onProgress(share: number): void;
}

/** Room for DuckDB itself, beyond which it uses the disk; summing up takes longer than it reads with two threads. */
const LIMITS = { memory_limit: '512MB', threads: '2' };

export async function readLog(request: ReadRequest, options: ReadOptions): Promise<RecordingAnswer> {
  const instance = await options.duckdb.DuckDBInstance.create(':memory:', LIMITS);
  try {
    const before = await fileState(request.path);
    const answer = await readWith(await instance.connect(), request, options);
    if (before === (await fileState(request.path))) return answer;
    return problem('The log was changed while it was read; read it again once it is written.');
  } catch (error) {
    return problem(sentenceOf(error));
  } finally {
    instance.closeSync();
  }
}

async function readWith(
  connection: DuckDBConnection,
  { path, columns, basis }: ReadRequest,
  { trustDetection, onProgress }: ReadOptions,
): Promise<RecordingAnswer> {
  await connection.run("SET TimeZone = 'UTC'");
  const log = await openLog(path, connection);
  if (!log.ok) return problem(log.problem);
  const detected = columns === undefined ? detectColumns(log.value) : undefined;
  if (detected !== undefined && (detected.doubts.length > 0 || !trustDetection)) return { kind: 'columns', detected };
  const chosen = chooseColumns(columns ?? detected?.columns ?? {}, log.value);
  if (!chosen.ok) return problem(chosen.problem);
  const summary = await sumUp(connection, log.value, chosen.value, basis, onProgress);
  if (!summary.ok) return problem(summary.problem);
  return { kind: 'summary', summary: summary.value, ...(detected === undefined ? {} : { detected }) };
}

async function sumUp(
  connection: DuckDBConnection,
  log: OpenLog,
  chosen: ChosenColumns,
  basis: RecordingBasis,
  onProgress: ReadOptions['onProgress'],
): Promise<Outcome<RecordingSummary, string>> {
  const { time, airTemperature, humidity, pressure, speed } = chosen;
  const values = [airTemperature, humidity, pressure, speed].flatMap((column) =>
    column === undefined ? [] : [canonicalNumber(log.number(column.index), column.unit)],
  );
  const selected = [orNaN(log.time(time.index, time.format)), ...values];
  const result = await connection.stream(`SELECT ${selected.join(', ')} FROM ${log.from}`);
  const summary = new RecordingFold(basis, humidity.quantity, time.format.clock);
  let rows = 0;
  let next = result.fetchChunk();
  for (let chunk = await next; chunk !== null && chunk.rowCount > 0; chunk = await next) {
    next = result.fetchChunk(); // DuckDB reads on while these rows are summed up
    summary.add(rowsOf(chunk, pressure !== undefined, speed !== undefined));
    rows += chunk.rowCount;
    onProgress(Math.min(1, rows / log.rowCount));
  }
  const broken = log.countsBroken ? await countBroken(connection) : 0;
  const done = summary.finish(usedColumns(chosen), broken);
  return done === undefined
    ? fail('The log has no two rows with a time, an air temperature and a humidity that can be.')
    : succeed(done);
}

async function countBroken(connection: DuckDBConnection): Promise<number> {
  const counted = await connection.runAndReadAll('SELECT count(DISTINCT line)::DOUBLE FROM reject_errors');
  return Number(counted.getRows()[0]?.[0] ?? 0);
}

function rowsOf(chunk: DuckDBDataChunk, hasPressure: boolean, hasSpeed: boolean): RowChunk {
  const column = (index: number): Float64Array => {
    const vector = chunk.getColumnVector(index);
    const numbers = new Float64Array(chunk.rowCount);
    for (let row = 0; row < numbers.length; row++) numbers[row] = vector.getItem(row) as number;
    return numbers;
  };
  return {
    time: column(0),
    airCelsius: column(1),
    humidity: column(2),
    pressure: hasPressure ? column(3) : undefined,
    speed: hasSpeed ? column(hasPressure ? 4 : 3) : undefined,
  };
}

/** What changes when the file is written to or replaced. */
export async function fileState(path: string): Promise<string> {
  const { size, mtimeMs, ino } = await stat(path);
  return `${size} ${mtimeMs} ${ino}`;
}

function sentenceOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  if (code === 'ENOENT') return 'There is no such file.';
  if (code === 'EISDIR') return 'This is a folder.';
  const [first = ''] = error instanceof Error ? error.message.split('\n') : [];
  return `The log cannot be read: ${first.replace(/\.?$/, '.')}`;
}

function problem(sentence: string): RecordingAnswer {
  return { kind: 'problem', sentence };
}
