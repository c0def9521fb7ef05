import { mkdirSync, readdirSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { answerRequest } from '../../server/src/recording/answer-request.ts';
import type { RecordingRequest } from '../../server/src/recording/messages.ts';
import { loadDuckDB } from '../../server/src/recording/source/duckdb.ts';
import { BASIS, describeWithDuckDB, logFolder, writeLog } from './small-log.ts';

const LOG = 't,T,Td\n2026-09-08T08:00:00Z,60,50\n2026-09-08T08:01:00Z,60,50\n';
const PROGRAM = new TextEncoder().encode('the first version');

function request(path: string, duckdbFolders = [process.cwd()]): RecordingRequest {
  return { path, columns: undefined, basis: BASIS, trustDetection: true, duckdbFolders };
}

const ask = (asked: RecordingRequest, program = PROGRAM) => answerRequest(asked, program, () => undefined);

beforeEach(() => {
  vi.stubEnv('XDG_CACHE_HOME', logFolder());
});
afterEach(() => vi.unstubAllEnvs());

function keptFiles(): readonly string[] {
  return readdirSync(join(process.env['XDG_CACHE_HOME'] ?? '', 'dewright', 'recordings'));
}

describe('where DuckDB is not installed', () => {
  const nowhere = logFolderOutside();

  it('one sentence says what to install, and where', async () => {
    const sentence = `Recordings are read with DuckDB, which is not installed: run “npm install @duckdb/node-api” in ${nowhere}.`;
    expect(loadDuckDB([nowhere])).toEqual({ ok: false, problem: sentence });
    expect(await ask(request(writeLog(LOG), [nowhere]))).toEqual({ kind: 'problem', sentence });
  });

  it('a package that does not load is as good as none', () => {
    const folder = logFolder();
    mkdirSync(join(folder, 'node_modules', '@duckdb', 'node-api'), { recursive: true });
    writeFileSync(
      join(folder, 'node_modules', '@duckdb', 'node-api', 'index.js'),
      'throw new Error("no such platform")',
    );
    expect(loadDuckDB([folder]).ok).toBe(false);
  });
});

/** A folder with no `node_modules` in it or above it. */
function logFolderOutside(): string {
  return join(process.cwd(), '..', 'no-such-folder');
}

describeWithDuckDB('what was read is kept', () => {
  it('and not read again while the log, what it is laid against and the program are the same', async () => {
    const path = writeLog(LOG);
    const first = await ask(request(path));
    expect(first.kind).toBe('summary');
    // Nothing could read it now.
    expect(await ask(request(path, [logFolderOutside()]))).toEqual(first);
    expect(keptFiles()).toHaveLength(1);
  });

  it('but read again where one of the three differs', async () => {
    const path = writeLog(LOG);
    await ask(request(path));
    const unread = { kind: 'problem', sentence: expect.stringContaining('not installed') };
    const nowhere = [logFolderOutside()];
    expect(await ask(request(path, nowhere), new TextEncoder().encode('the second version'))).toEqual(unread);
    expect(await ask({ ...request(path, nowhere), basis: { ...BASIS, rises: [0, 8] } })).toEqual(unread);
    writeFileSync(path, LOG.replaceAll('60', '61'));
    expect(await ask(request(path, nowhere))).toEqual(unread);
  });

  it('a log under another name is the same log', async () => {
    const first = await ask(request(writeLog(LOG)));
    expect(await ask(request(writeLog(LOG, 'copy.csv'), [logFolderOutside()]))).toEqual(first);
  });

  it('the newest 64 answers are kept', async () => {
    const path = writeLog(LOG);
    await ask(request(path));
    const folder = join(process.env['XDG_CACHE_HOME'] ?? '', 'dewright', 'recordings');
    const long = new Date('2020-01-01');
    for (let number = 0; number < 70; number++) {
      writeFileSync(join(folder, `old-${number}.json`), '{}');
      utimesSync(join(folder, `old-${number}.json`), long, long);
    }
    const [kept] = keptFiles().filter((name) => !name.startsWith('old'));
    await ask(request(writeLog(LOG.replaceAll('60', '62'))));
    expect(keptFiles()).toHaveLength(64);
    expect(keptFiles()).toContain(kept);
  });

  it('a damaged answer is read anew', async () => {
    const path = writeLog(LOG);
    const first = await ask(request(path));
    const folder = join(process.env['XDG_CACHE_HOME'] ?? '', 'dewright', 'recordings');
    writeFileSync(join(folder, keptFiles()[0] ?? ''), '{"kind":');
    expect(await ask(request(path))).toEqual(first);
  });
});
