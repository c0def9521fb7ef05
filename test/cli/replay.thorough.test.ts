import { spawnSync } from 'node:child_process';
import { cpSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { describeWithDuckDB } from '../recording/small-log.ts';
import { copyOfSamples, runIn, temporaryFolder } from '../samples/built-program.ts';
import { SAMPLES_FOLDER } from '../samples/sample-files.ts';

const LOG = 'logs/kiln-3-2026-09-08.csv';
const SITE = 'timber-kilns.dewsite.yaml';
const VISIT = 'timber-kilns-2026-09-08.dewvisit.yaml';

beforeEach(() => {
  vi.stubEnv('XDG_CACHE_HOME', temporaryFolder());
});
afterEach(() => vi.unstubAllEnvs());

describeWithDuckDB('replay', () => {
  const replay = (...words: readonly string[]) => runIn(SAMPLES_FOLDER, 'replay', ...words);

  it('says how long the sample kiln was too wet, which its log shows in six rows of 15 minutes', () => {
    const { output, status, errors } = replay(LOG, '--space', 'kiln-3', SITE);
    expect([status, errors]).toEqual([0, '']);
    expect(output).toContain('49 rows from 2026-09-08T08:00:00Z to 2026-09-08T20:00:00Z');
    expect(output).toContain('Outside the envelope for 90 min, 12.5 % of the time.');
    expect(output).toContain(
      'drying: relative humidity above 80 %RH for 90 min, up to 91.8 %RH at 2026-09-08T14:15:00Z',
    );
    expect(output).toContain('dew-point from “T_dew” in degC');
  });

  it('JSON has the same numbers with their units', () => {
    const { output } = replay(LOG, '--space', 'kiln-3', SITE, '--format', 'json');
    const { version, space, extent, outside, sensors, faults, density } = JSON.parse(output);
    expect([version, space, extent.rows]).toEqual([1, 'kiln-3', 49]);
    expect(outside.time).toEqual({ value: 5400, unit: 's' });
    expect(outside.share).toBe(0.125);
    const [passed] = outside.envelopes[1].passed;
    expect(passed).toMatchObject({ quantity: 'relative-humidity', side: 'above', limit: { value: 80, unit: '%RH' } });
    expect(sensors.map(({ rise }: { rise: object }) => rise)).toEqual([
      { value: 0, unit: 'K' },
      { value: 6, unit: 'K' },
    ]);
    expect(Object.values(faults).every((count) => count === 0)).toBe(true);
    const total = density.cells.reduce((sum: number, [, , seconds]: readonly number[]) => sum + (seconds ?? 0), 0);
    expect(total).toBe(extent.time.value);
  });

  it('being outside counts as a warning', () => {
    expect(replay(LOG, '--space', 'kiln-3', SITE, '--fail-on', 'warning').status).toBe(1);
  });

  it('the site may be left out where one site has the space', () => {
    expect(replay(LOG, '--space', 'kiln-3').status).toBe(0);
  });

  it('columns may be named, with their units', () => {
    const folder = temporaryFolder();
    cpSync(SAMPLES_FOLDER, folder, { recursive: true });
    writeFileSync(join(folder, 'log.csv'), 'when;c;b\n0;140;0,5\n60;140;0,6\n120;140;0,6\n');
    const words = ['replay', 'log.csv', '--space', 'kiln-3', SITE];
    const unclear = runIn(folder, ...words);
    expect(unclear.status).toBe(2);
    expect(unclear.errors).toBe(
      'dewright: log.csv: No column was found that holds the time. No column was found that holds the air temperature. No column was found that holds a humidity. Say which column is which: --columns “time=COLUMN,air-temperature=COLUMN,relative-humidity=COLUMN”.\n',
    );
    const columns = 'time=when,air-temperature=c in degF,relative-humidity=b in 1';
    const named = runIn(folder, ...words, '--columns', columns);
    expect([named.status, named.errors]).toEqual([0, '']);
    expect(named.output).toContain('air temperature 60 °C all the time');
  });

  it.each([
    [[LOG, '--space', 'kiln-9', SITE], '--space kiln-9: there is no such space; the nearest is kiln-1'],
    [[LOG, SITE], 'replay needs --space SPACE, one of kiln-1, kiln-2, kiln-3'],
    [['--space', 'kiln-3'], 'replay takes a log'],
    [['lost.csv', '--space', 'kiln-3', SITE], 'lost.csv: There is no such file.'],
    [[LOG, '--space', 'kiln-3', SITE, '--columns', 'heat=T'], '--columns heat=T: written KEY=COLUMN'],
    [
      [LOG, '--space', 'kiln-3', SITE, '--columns', 'time=time,air-temperature=T,dew-point=T_dew'],
      `${LOG}: The log has no column “T”; it has time, T_dry, T_dew, v.`,
    ],
  ])('%j gets one sentence and exit status 2', (words, sentence) => {
    const { status, output, errors } = replay(...words);
    expect([status, output]).toEqual([2, '']);
    expect(errors).toContain(`dewright: ${sentence}`);
    expect(errors.trim().split('\n')).toHaveLength(1);
  });

  it('check reads the recording of a visit before it checks, and a log that is not there is told once', () => {
    const folder = copyOfSamples();
    const found = runIn(folder, 'check', VISIT, '--only', 'log-outside-envelope');
    expect([found.status, found.errors]).toEqual([0, '']);
    expect(found.output).toContain('outside the envelope of kiln-3 for 12.5 % of its time');
    writeFileSync(join(folder, 'logs', 'kiln-3-2026-09-08.csv'), '');
    const empty = runIn(folder, 'check', VISIT, '--only', 'log-outside-envelope');
    expect(empty.output).toContain('nothing to report');
    expect(empty.errors).toBe('dewright: the recording logs/kiln-3-2026-09-08.csv was not read. The log is empty.\n');
  });

  it('the fix widens the envelope in the site file, and the recording then lies inside', () => {
    const folder = copyOfSamples();
    expect(runIn(folder, 'fix', VISIT, '--choose', 'log-outside-envelope=1').status).toBe(0);
    const again = runIn(folder, 'check', VISIT, '--only', 'log-outside-envelope');
    expect(again.output).toContain('nothing to report');
  });
});

it('where DuckDB is not installed one sentence says what to install and where, and all else is checked', () => {
  const folder = copyOfSamples();
  for (const program of ['cli.js', 'recording.js'])
    cpSync(join('server', 'dist', program), join(folder, 'server', 'dist', program));
  const run = (...words: readonly string[]) =>
    spawnSync(process.execPath, [join(folder, 'server', 'dist', 'cli.js'), ...words], {
      cwd: folder,
      encoding: 'utf8',
    });
  const sentence = `Recordings are read with DuckDB, which is not installed: run “npm install @duckdb/node-api” in ${folder}.`;
  const replayed = run('replay', LOG, '--space', 'kiln-3', SITE);
  expect([replayed.status, replayed.stdout, replayed.stderr]).toEqual([2, '', `dewright: ${LOG}: ${sentence}\n`]);
  const checked = run('check', VISIT, '--fail-on', 'never');
  expect(checked.status).toBe(0);
  expect(checked.stdout).toContain(VISIT);
  expect(checked.stderr).toBe(`dewright: the recording ${LOG} was not read. ${sentence}\n`);
});
