import { describe, expect, it } from 'vitest';
import { chooseColumns } from '../../server/src/recording/dialect/chosen-columns.ts';
import { columnName } from '../../server/src/recording/dialect/column-names.ts';
import { detectColumns, type LogSample } from '../../server/src/recording/dialect/detect-columns.ts';
import { readLogText } from '../../server/src/recording/dialect/log-text.ts';
import { showTime, timeFormats } from '../../server/src/recording/dialect/time-format.ts';
import { describeWithDuckDB, summaryOf } from './small-log.ts';

function sampleOf(text: string | Uint8Array): LogSample {
  const read = readLogText(typeof text === 'string' ? new TextEncoder().encode(text) : text, true);
  if (!read.ok) throw new Error(read.problem);
  return { ...read.value, typedTimes: new Map() };
}

function detect(header: string, row: string) {
  return detectColumns(sampleOf(`${header}\n${row}\n${row}\n`));
}

describe('columns are told by name, unit and values', () => {
  it.each([
    ['T_dry [°C]', 'tdry', '°C'],
    ['RH (%)', 'rh', '%'],
    ['Td_degF', 'td', 'degF'],
    ['p / hPa', 'p', 'hPa'],
    ['T in degF', 't', 'degF'],
    ['Temperature 1', 'temperature', undefined],
    ['dew point', 'dewpoint', undefined],
  ])('%s is the name %s in %s', (header, name, unit) => {
    expect(columnName(header, 0)).toMatchObject({ name, unit });
  });

  it.each([
    [
      't,T_dry [°C],RH (%)',
      '2026-09-08T08:00:00Z,60,50',
      { time: 't', 'air-temperature': 'T_dry [°C]', 'relative-humidity': 'RH (%)' },
    ],
    [
      'Zeit;Lufttemperatur;Taupunkt',
      '08.09.2026 08:00;60,5;50,1',
      { time: 'Zeit', 'air-temperature': 'Lufttemperatur', 'dew-point': 'Taupunkt' },
    ],
    [
      'timestamp\ttemp_F\tTd_degF\tv',
      '1757318400\t140\t122\t2',
      { time: 'timestamp', 'air-temperature': 'temp_F', 'dew-point': 'Td_degF', speed: 'v' },
    ],
  ])('%s', (header, row, columns) => {
    expect(detect(header, row)).toEqual({ columns, doubts: [] });
  });

  it('says what it cannot tell apart, and what it misses', () => {
    const row = '2026-09-08T08:00:00Z,60,61,0.5';
    expect(detect('t,T1,T2,RH', row).doubts).toEqual([
      '“T1” and “T2” may each be the air temperature.',
      'The relative humidity “RH” may be in %RH or 1 (a fraction).',
    ]);
    expect(detect('t,v', '2026-09-08T08:00:00Z,2').doubts).toEqual([
      'No column was found that holds the air temperature.',
      'No column was found that holds a humidity.',
    ]);
    const unnamed = detect('t,T,Td,p', '2026-09-08 08:00,60,50,990');
    expect(unnamed.columns.pressure).toBe('p in hPa');
    expect(unnamed.doubts).toEqual(['The pressure “p” names no unit and seems to be in hPa.']);
    expect(detect('t,T,RH', '03/04/2026 08:00,60,50').doubts).toEqual([
      'The days and months of “t” cannot be told apart; write them by ISO 8601.',
    ]);
  });
});

describe('columns that are named are taken as they are named', () => {
  const sample = sampleOf('t,T_dry,RH\n2026-09-08T08:00:00Z,140,50\n');

  it('a unit may be given with the name', () => {
    const chosen = chooseColumns(
      { time: 't', 'air-temperature': 'T_dry in degF', 'relative-humidity': 'RH in 1' },
      sample,
    );
    expect(chosen).toMatchObject({ ok: true, value: { airTemperature: { index: 1, unit: { symbol: 'degF' } } } });
    expect(chosen).toMatchObject({ value: { humidity: { quantity: 'relative-humidity', unit: { factor: 1 } } } });
  });

  it('a column that is not there, and a unit that is none, get their sentence', () => {
    const named = { time: 't', 'air-temperature': 'Tdry', 'relative-humidity': 'RH' };
    expect(chooseColumns(named, sample)).toEqual({
      ok: false,
      problem: 'The log has no column “Tdry”; the nearest is “T_dry”.',
    });
    const other = { ...named, 'air-temperature': 'T_dry in bar' };
    expect(chooseColumns(other, sample)).toEqual({
      ok: false,
      problem: '“bar” in “T_dry in bar” is no unit of the air temperature.',
    });
  });
});

describe('times', () => {
  it.each([
    ['2026-09-08T08:00:00Z', 'ISO 8601 with its zone'],
    ['2026-09-08 08:00:00+02:00', 'ISO 8601 with its zone'],
    ['2026-09-08 08:00', 'ISO 8601, local time'],
    ['08.09.2026 08:00:00', 'day.month.year, local time'],
    ['25/09/2026 08:00', 'day/month/year, local time'],
    ['09/25/2026 08:00', 'month/day/year, local time'],
    ['2026/09/08 08:00', 'year/month/day, local time'],
    ['1757318400', 'seconds since 1970'],
    ['1757318400000', 'milliseconds since 1970'],
    ['3600', 'seconds from the start'],
  ])('%s is %s', (text, title) => {
    expect(timeFormats([text]).map((format) => format.title)).toEqual([title]);
  });

  it('are shown as the clock of the log has them', () => {
    expect(showTime(1_757_318_400, 'zoned')).toBe('2025-09-08T08:00:00Z');
    expect(showTime(1_757_318_400, 'local')).toBe('2025-09-08T08:00:00');
    expect(showTime(5400, 'start')).toBe('1.5 h from the start');
  });
});

describeWithDuckDB('logs of every writing say the same', () => {
  const PLAIN = 't,T,RH\n2026-09-08 08:00,60.5,50\n2026-09-08 08:01,75.5,50\n2026-09-08 08:02,60.5,50\n';
  const german = PLAIN.replaceAll(',', ';').replaceAll('.5', ',5');

  it.each<[string, string | Uint8Array]>([
    ['semicolons and a decimal comma', german],
    ['a decimal comma in quotes', PLAIN.replaceAll(/(\d+)\.5/g, '"$1,5"')],
    ['tabs', PLAIN.replaceAll(',', '\t')],
    ['CRLF and a byte-order mark', `\ufeff${PLAIN.replaceAll('\n', '\r\n')}`],
    ['no line end at the end', PLAIN.trimEnd()],
    ['empty lines', PLAIN.replaceAll('\n', '\n\n')],
    ['blanks around the values', PLAIN.replaceAll(',', ' , ')],
    ['Latin-1 with a degree sign', Buffer.from(PLAIN.replace('T', 'T [°C]'), 'latin1')],
    ['UTF-8 with a degree sign', PLAIN.replace('T', 'T [°C]')],
    ['UTF-16', Buffer.from(`\ufeff${PLAIN}`, 'utf16le')],
    ['days before months', PLAIN.replaceAll('2026-09-08', '08.09.2026')],
    ['degrees Fahrenheit', PLAIN.replace('T', 'T_degF').replaceAll('60.5', '140.9').replaceAll('75.5', '167.9')],
  ])('%s', async (_, text) => {
    const { outside, extent, faults } = await summaryOf(text);
    expect(extent).toMatchObject({ from: '2026-09-08T08:00:00', rows: 3, usedSeconds: 120 });
    expect(faults).toMatchObject({ valueless: 0, timeless: 0 });
    const [excess] = outside.envelopes[0]?.excesses ?? [];
    expect(excess).toMatchObject({ quantity: 'air-temperature', seconds: 60 });
    expect(excess?.farthest).toBeCloseTo(75.5, 9);
  });
});
