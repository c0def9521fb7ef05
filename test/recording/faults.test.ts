import { appendFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { answerOf, describeWithDuckDB, duckdb, logFolder, sentenceOf, summaryOf, writeLog } from './small-log.ts';

/** Rows of one minute, 60 °C and 50 %RH, with those given put in at their minute. */
function minutes(count: number, rows: Readonly<Record<number, string>> = {}): string {
  const lines = Array.from({ length: count }, (_, minute) => rows[minute] ?? `${clock(minute)},60,50`);
  return `t,T,RH\n${lines.join('\n')}\n`;
}

function clock(minute: number, zone = 'Z', day = '2026-09-08'): string {
  const hours = String(Math.floor(minute / 60)).padStart(2, '0');
  return `${day}T${hours}:${String(minute % 60).padStart(2, '0')}:00${zone}`;
}

describeWithDuckDB('what is wrong with a log is counted and said', () => {
  it('rows without a number are time without a value', async () => {
    const { faults, extent } = await summaryOf(minutes(11, { 3: `${clock(3)},n/a,50`, 4: `${clock(4)},60,` }));
    expect(faults).toMatchObject({ valueless: 2, timeless: 0 });
    expect(extent).toMatchObject({ seconds: 600, usedSeconds: 480 });
  });

  it('rows without a time are left out, and the row before stands for them', async () => {
    const { faults, extent } = await summaryOf(minutes(11, { 3: 'soon,60,50' }));
    expect(faults).toMatchObject({ timeless: 1, gaps: 0 });
    expect(extent).toMatchObject({ seconds: 600, usedSeconds: 600 });
  });

  it('not-a-number and infinity are no numbers', async () => {
    const { faults } = await summaryOf(minutes(11, { 3: `${clock(3)},NaN,50`, 4: `${clock(4)},60,inf` }));
    expect(faults.valueless).toBe(2);
  });

  it('air that cannot be is time without a value; a little above saturation is saturated air', async () => {
    const { faults, extent, sensors } = await summaryOf(
      minutes(61, { 3: `${clock(3)},60,130`, 4: `${clock(4)},60,102`, 5: `${clock(5)},60,-3` }),
    );
    expect(faults).toMatchObject({ impossible: 2, takenAsSaturated: 1 });
    expect(extent).toMatchObject({ seconds: 3600, usedSeconds: 3480 });
    expect(sensors[0]).toMatchObject({ highest: 1, secondsAboveLimit: 60 });
  });

  it('of rows at one time the last counts', async () => {
    const { faults, extent, outside } = await summaryOf(
      minutes(11, { 4: `${clock(3)},90,50`, 5: `${clock(5)},60,50` }),
    );
    expect(faults.duplicates).toBe(1);
    expect(extent.seconds).toBe(600);
    expect(outside.seconds).toBe(120);
  });

  it('a row earlier than the one before breaks the time, and the row before stands for none', async () => {
    const { faults, extent } = await summaryOf(
      minutes(11, {
        5: `${clock(2)},60,50`,
        6: `${clock(3)},60,50`,
        7: `${clock(4)},60,50`,
        8: `${clock(5)},60,50`,
        9: `${clock(6)},60,50`,
        10: `${clock(7)},60,50`,
      }),
    );
    expect(faults.backwards).toBe(1);
    expect(extent.seconds).toBe(540);
  });

  it('a gap is nobody’s time but for one usual step', async () => {
    const { faults, extent } = await summaryOf(
      minutes(11, {
        6: `${clock(66)},60,50`,
        7: `${clock(67)},60,50`,
        8: `${clock(68)},60,50`,
        9: `${clock(69)},60,50`,
        10: `${clock(70)},60,50`,
      }),
    );
    expect(faults).toMatchObject({
      gaps: 1,
      gapSeconds: 3600,
      longestGap: { seconds: 3600, from: '2026-09-08T00:05:00Z' },
    });
    expect(extent.seconds).toBe(600);
  });

  it('a local clock that jumps on the last Sunday of October or March changes to or from summer time', async () => {
    // The European Union changes at 03:00 and 02:00 local time in Central Europe: Directive 2000/84/EC.
    const back = ['02:58', '02:59', '02:00', '02:01'].map((time) => `2026-10-25T${time}:00,60,50`);
    const forward = ['01:58', '01:59', '03:00', '03:01'].map((time) => `2026-03-29T${time}:00,60,50`);
    const autumn = await summaryOf(`t,T,RH\n${back.join('\n')}\n`);
    expect(autumn.faults).toMatchObject({ clockBack: 1, backwards: 0 });
    expect(autumn.extent.seconds).toBe(180);
    const spring = await summaryOf(`t,T,RH\n${forward.join('\n')}\n`);
    expect(spring.faults).toMatchObject({ clockForward: 1, gaps: 0 });
    expect(spring.extent.seconds).toBe(180);
  });

  it('the same jumps are none with a zone, and none on a Tuesday', async () => {
    const zoned = ['01:58', '01:59', '03:00', '03:01'].map((time) => `2026-03-29T${time}:00Z,60,50`);
    expect((await summaryOf(`t,T,RH\n${zoned.join('\n')}\n`)).faults).toMatchObject({ clockForward: 0, gaps: 1 });
    const tuesday = ['01:58', '01:59', '03:00', '03:01'].map((time) => `2026-03-31T${time}:00,60,50`);
    expect((await summaryOf(`t,T,RH\n${tuesday.join('\n')}\n`)).faults).toMatchObject({ clockForward: 0, gaps: 1 });
  });

  it('a line too long and bytes that are no text are counted as broken rows', async () => {
    const long = minutes(40, { 3: 'x'.repeat(5_000_000) });
    expect((await summaryOf(long)).faults).toMatchObject({ brokenRows: 1 });
    const bytes = Buffer.from(minutes(20_000));
    bytes[bytes.length - 100] = 0xff;
    expect((await summaryOf(bytes)).faults).toMatchObject({ brokenRows: 1 });
  });

  it('rows with fewer cells have no value, and cells too many are passed over', async () => {
    const { faults, extent } = await summaryOf(minutes(11, { 3: `${clock(3)},60`, 4: `${clock(4)},60,50,7` }));
    expect(faults.valueless).toBe(1);
    expect(extent.rows).toBe(11);
  });

  it('files that are no logs get one sentence each', async () => {
    expect(await sentenceOf('')).toBe('The log is empty.');
    expect(await sentenceOf('a log of the kiln\n')).toContain('names one column only');
    expect(await sentenceOf('2026-09-08T08:00:00Z,60,50\n')).toContain('this one starts with values');
    expect(await sentenceOf('t,T,RH\n')).toContain('No column was found that holds the time');
    expect(await sentenceOf(minutes(1))).toContain('no two rows');
    expect(await sentenceOf(`x${'x'.repeat(400_000)}`)).toContain('too long');
    expect(await answerOf(join(logFolder(), 'lost.csv'))).toEqual({
      kind: 'problem',
      sentence: 'There is no such file.',
    });
    expect(await answerOf(logFolder())).toEqual({ kind: 'problem', sentence: 'This is a folder.' });
    expect(await answerOf(writeLog('PAR1 and no more', 'log.parquet'))).toMatchObject({ kind: 'problem' });
  });

  it('a file that changes while it is read is not taken for either', async () => {
    const path = writeLog(minutes(1440));
    const answer = await answerOf(path, { onProgress: () => appendFileSync(path, `${clock(1441)},60,50\n`) });
    expect(answer).toEqual({ kind: 'problem', sentence: expect.stringContaining('changed while it was read') });
  });

  it('a path with a quotation mark is a path', async () => {
    expect(await answerOf(writeLog(minutes(3), "kiln's.csv"))).toMatchObject({ kind: 'summary' });
  });
});

describeWithDuckDB('Parquet', () => {
  const write = async (select: string): Promise<string> => {
    const path = join(logFolder(), 'log.parquet');
    const instance = await duckdb().DuckDBInstance.create(':memory:');
    const connection = await instance.connect();
    await connection.run(`SET TimeZone = 'UTC'; COPY (${select}) TO '${path}' (FORMAT parquet)`);
    instance.closeSync();
    return path;
  };
  const rows = (time: string) => `SELECT ${time} AS t, 60.0::FLOAT AS "T [°C]", 50 AS RH FROM range(11) r(i)`;

  it('timestamps with a zone are instants, and those without are local time', async () => {
    const zoned = await answerOf(await write(rows("TIMESTAMPTZ '2026-03-29 01:50:00+00' + to_minutes(i)")));
    expect(zoned).toMatchObject({
      kind: 'summary',
      summary: { extent: { from: '2026-03-29T01:50:00Z', seconds: 600 } },
    });
    const jump = "TIMESTAMP '2026-03-29 01:50:00' + to_minutes(CASE WHEN i < 5 THEN i ELSE i + 60 END)";
    const local = await answerOf(await write(rows(jump)));
    expect(local).toMatchObject({
      kind: 'summary',
      summary: { extent: { seconds: 600 }, faults: { clockForward: 1 } },
    });
  });

  it('epoch milliseconds are times, and text is read as in a CSV file', async () => {
    const epoch = await answerOf(await write(rows('1757318400000 + i * 60000')));
    expect(epoch).toMatchObject({
      kind: 'summary',
      summary: { extent: { from: '2025-09-08T08:00:00Z', seconds: 600 } },
    });
    const text = await answerOf(await write(rows("'2026-09-08T08:0' || (i % 10) || ':00Z'")));
    expect(text).toMatchObject({ kind: 'summary', summary: { extent: { rows: 11 }, faults: { backwards: 1 } } });
  });
});
