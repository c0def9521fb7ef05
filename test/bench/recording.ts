/**
 * Measures how fast a recording is read: a year of rows, one a second, as Parquet and as CSV, made by DuckDB itself.
 * Beside each the bare scan of the same columns by DuckDB in the same run, since machines differ.
 * `npm run bench:recording -- ROWS` takes another number of rows.
 */
import { fork } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { RecordingAnswer } from '../../server/src/evaluate/recorded/answer.ts';
import type { RecordingBasis } from '../../server/src/evaluate/recorded/summary.ts';
import type { RecordingMessage } from '../../server/src/recording/messages.ts';
import { type DuckDBLibrary, loadDuckDB } from '../../server/src/recording/source/duckdb.ts';

const A_YEAR = 365 * 86_400;
const PROGRAM = resolve('server/dist/recording.js');

const BASIS: RecordingBasis = {
  space: 'kiln',
  pressure: 99_000,
  envelopes: [
    {
      phase: 'drying',
      bounds: [
        { quantity: 'air-temperature', low: 50, high: 70 },
        { quantity: 'relative-humidity', low: 0.35, high: 0.8 },
        { quantity: 'speed', low: 0.5, high: 3 },
      ],
    },
  ],
  rises: [0, 6],
  sensorHumidityLimit: 0.8,
  unheatedHumidityLimit: 0.9,
};

/** Air that swings over hours and days, with the noise and the rounding of a good logger: 0.05 K, written to 0.01 K. */
const ROWS_SQL = `
  SELECT TIMESTAMP '2025-01-01' + to_seconds(i) AS t,
         round(60 + 6 * sin(i / 14000.0) + 3 * sin(i / 90000.0) + 0.1 * random(), 2) AS T_dry,
         round(52 + 5 * sin(i / 14000.0 + 0.3) + 3 * sin(i / 90000.0) + 0.1 * random(), 2) AS T_dew,
         round(2 + 0.5 * random(), 1) AS v
  FROM range($rows) rows(i)`;

async function main(): Promise<void> {
  const duckdb = loadDuckDB([process.cwd()]);
  if (!duckdb.ok) throw new Error(duckdb.problem);
  const rows = Number(process.argv[2] ?? A_YEAR);
  const folder = mkdtempSync(join(tmpdir(), 'dewright-bench-'));
  try {
    for (const name of ['year.parquet', 'year.csv']) {
      const path = join(folder, name);
      await run(duckdb.value, `COPY (${ROWS_SQL.replace('$rows', String(rows))}) TO '${path}'`);
      const bare = await seconds(() => run(duckdb.value, bareScan(path)));
      const { answer, peakBytes, taken } = await read(path);
      const ok = answer.kind === 'summary' && answer.summary.extent.rows === rows;
      report(name, { rows: ok ? rows : Number.NaN, size: statSync(path).size, bare, taken, peakBytes });
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What reading the same columns as numbers and times costs DuckDB alone. It may not answer from the file's statistics. */
function bareScan(path: string): string {
  return `SELECT sum(epoch(t)), sum(T_dry), sum(T_dew), sum(v) FROM '${path}'`;
}

async function run({ DuckDBInstance }: DuckDBLibrary, sql: string): Promise<void> {
  const instance = await DuckDBInstance.create(':memory:');
  await (await instance.connect()).run(sql);
  instance.closeSync();
}

async function seconds(work: () => Promise<void>): Promise<number> {
  const start = performance.now();
  await work();
  return (performance.now() - start) / 1e3;
}

interface Read {
  readonly answer: RecordingAnswer;
  readonly taken: number;
  readonly peakBytes: number;
}

/** In the program that users run, with nothing kept from before. */
async function read(path: string): Promise<Read> {
  const kept = mkdtempSync(join(tmpdir(), 'dewright-bench-kept-'));
  const child = fork(PROGRAM, { env: { ...process.env, XDG_CACHE_HOME: kept } });
  let peakBytes = 0;
  const watching = setInterval(() => {
    peakBytes = Math.max(peakBytes, residentBytes(child.pid));
  }, 50);
  const start = performance.now();
  try {
    const answer = await new Promise<RecordingAnswer>((resolve, reject) => {
      child.on('message', (message: RecordingMessage) => {
        if (message.kind === 'answer') resolve(message.answer);
      });
      child.on('close', () => reject(new Error('The program ended without an answer.')));
      child.send({ path, basis: BASIS, trustDetection: true, duckdbFolders: [process.cwd()] });
    });
    return { answer, taken: (performance.now() - start) / 1e3, peakBytes };
  } finally {
    clearInterval(watching);
    rmSync(kept, { recursive: true, force: true });
  }
}

/** Of a process on Linux; elsewhere 0, and the benchmark says nothing of the memory. */
function residentBytes(pid: number | undefined): number {
  try {
    const kilobytes = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
    return Number(kilobytes ?? 0) * 1024;
  } catch {
    return 0;
  }
}

interface Measured {
  readonly rows: number;
  readonly size: number;
  readonly bare: number;
  readonly taken: number;
  readonly peakBytes: number;
}

function report(name: string, { rows, size, bare, taken, peakBytes }: Measured): void {
  const million = (number: number): string => `${(number / 1e6).toFixed(1)} million`;
  const megabytes = (bytes: number): string => `${Math.round(bytes / 1e6)} MB`;
  process.stdout.write(
    `${name}: ${million(rows)} rows, ${megabytes(size)}\n` +
      `  read and laid against the envelope in ${taken.toFixed(1)} s, ${million(rows / taken)} rows/s, peak ${megabytes(peakBytes)}\n` +
      `  DuckDB's bare scan of the same columns in ${bare.toFixed(1)} s: ${(taken / bare).toFixed(1)} times that\n`,
  );
}

await main();
