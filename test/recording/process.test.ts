import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { readInProcess } from '../../server/src/recording/reader-process.ts';
import { BASIS, describeWithDuckDB, logFolder, writeLog } from './small-log.ts';

const PROGRAM = resolve('server/dist/recording.js'); // `npm test` builds it

beforeEach(() => {
  vi.stubEnv('XDG_CACHE_HOME', logFolder());
});
afterEach(() => vi.unstubAllEnvs());

function secondsOf(rows: number): string {
  return `t,T,RH\n${Array.from({ length: rows }, (_, second) => `${second},${60 + (second % 500) / 100},50`).join('\n')}\n`;
}

function read(rows: number, onProgress: (share: number) => void, signal?: AbortSignal) {
  const request = { path: writeLog(secondsOf(rows)), columns: undefined, basis: BASIS, trustDetection: true };
  return readInProcess(
    { ...request, duckdbFolders: [process.cwd()] },
    { program: PROGRAM, onProgress, ...(signal === undefined ? {} : { signal }) },
  );
}

describeWithDuckDB('a log that is read in a process of its own', () => {
  it('tells its progress, and then what it says', async () => {
    const shares: number[] = [];
    const answer = await read(600_000, (share) => shares.push(share));
    expect(answer).toMatchObject({ kind: 'summary', summary: { extent: { rows: 600_000, seconds: 599_999 } } });
    expect(shares.length).toBeGreaterThan(0);
    expect(shares).toEqual(shares.toSorted((one, other) => one - other));
    expect(Math.max(...shares)).toBeLessThanOrEqual(1);
  });

  it('is let go of at once when it is cancelled', async () => {
    const cancelling = new AbortController();
    const answer = await read(600_000, () => cancelling.abort(), cancelling.signal);
    expect(answer).toEqual({ kind: 'problem', sentence: 'The reading of the recording was cancelled.' });
  });
});

it('a program that is not there, or ends before it is done, gets one sentence', async () => {
  expect(existsSync(PROGRAM)).toBe(true);
  const request = { path: '', columns: undefined, basis: BASIS, trustDetection: true, duckdbFolders: [] };
  const lost = await readInProcess(request, { program: resolve('lost.js'), onProgress: () => undefined });
  expect(lost).toEqual({ kind: 'problem', sentence: 'The program that reads recordings ended before it was done.' });
});
