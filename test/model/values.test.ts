import { describe, expect, it } from 'vitest';
import { isDate, likelyDates } from '../../server/src/model/date.ts';
import { siteModelOf } from '../../server/src/model/file-models.ts';
import { problemsOf, read, siteWithPoint, siteWithSpace } from './problems.ts';

const AIR = 'air: {temperature: 60 degC, humidity: 80 %RH}';

describe('a value that cannot be read', () => {
  it.each([
    [
      'a bare number',
      siteWithSpace(AIR, 'pressure: 1013'),
      '1013',
      ['Write 1013 hPa', 'Write 1013 mbar', 'Write 1013 kPa'],
    ],
    [
      'a bare altitude',
      'dewright: 1\nsite: {id: a, altitude: 210}\n',
      '210',
      ['Write 210 m', 'Write 210 cm', 'Write 210 mm'],
    ],
    ['a bare interval', siteWithPoint('checks: {interval: 6}'), '6', ['Write 6 months', 'Write 6 years', 'Write 6 d']],
    [
      'a decimal comma',
      siteWithSpace('air: {temperature: 60 degC, humidity: 0,5 %RH}'),
      '0,5 %RH',
      ['Write 0.5 %RH (safe)'],
    ],
    [
      'decimal commas in a range',
      siteWithSpace('air: {humidity: 60,5 .. 80,5 %RH, temperature: 60 degC}'),
      '60,5 .. 80,5 %RH',
      ['Write 60.5 .. 80.5 %RH (safe)'],
    ],
    [
      'a typographic minus',
      'dewright: 1\nsite: {id: a, surroundings: −5 .. 30 degC}\n',
      '−5 .. 30 degC',
      ['Write -5 .. 30 degC (safe)'],
    ],
    [
      'thousands set off by a comma',
      siteWithSpace(AIR, 'pressure: "1,013 hPa"'),
      '1,013 hPa',
      ['Write 1.013 hPa', 'Write 1013 hPa'],
    ],
    ['an unknown unit', siteWithSpace(AIR, 'pressure: 99 Kpa'), 'Kpa', ['Write 99 kPa']],
    ['a unit of something else', siteWithSpace(AIR, 'pressure: 99 mm'), 'mm', []],
    [
      'a tolerance in the unit of another quantity',
      siteWithPoint('reports: {dew-point: {tolerance: 3 %RH}}'),
      '%RH',
      [],
    ],
    [
      'a date with points',
      siteWithPoint('checks: {interval: 6 months, last: 14.03.2026}'),
      '14.03.2026',
      ['Write 2026-03-14'],
    ],
    ['a day that no calendar has', siteWithPoint('checks: {interval: 6 months, last: 2026-02-30}'), '2026-02-30', []],
    [
      'a fixed air temperature',
      siteWithPoint('reports: {wet-bulb: {air-temperature: 60}}'),
      '60',
      ['Write 60 degC', 'Write 60 degF', 'Write 60 K'],
    ],
  ])('%s', (_, text, marked, fixes) => {
    expect(problemsOf(text)).toMatchObject([{ rule: 'value-unreadable', marked, fixes }]);
  });

  it('leaves the rest of its entry readable', () => {
    const text = siteWithSpace('air: {temperature: warm, humidity: 80 %RH}', 'gradient: 0.8 K/m');
    const space = siteModelOf(read(text).model).spaces.get('kiln-2')?.located?.value;
    expect(space?.air?.value.temperature).toBeUndefined();
    expect(space?.air?.value.humidity?.value).toMatchObject({ low: 0.8, high: 0.8 });
    expect(space?.gradient?.value.value).toBe(0.8);
  });
});

it('a range the wrong way round is turned', () => {
  const text = siteWithSpace('air: {temperature: 78 .. 55 degC, humidity: 80 %RH}');
  const [problem] = problemsOf(text);
  expect(problem).toMatchObject({ rule: 'range-reversed', marked: '78 .. 55', fixes: ['Write 55 .. 78 degC (safe)'] });
  expect(problem?.mended).toBe(text.replace('78 .. 55', '55 .. 78'));
});

it('a difference in degrees is read, and K is suggested', () => {
  const text = siteWithPoint('reports: {dew-point: {tolerance: 0.8 °C}}');
  expect(problemsOf(text)).toMatchObject([
    { rule: 'difference-in-degrees', marked: '0.8 °C', fixes: ['Write 0.8 K (safe)'] },
  ]);
  const point = siteModelOf(read(text).model).points.get('K2-MT-101')?.located?.value;
  expect(point?.reports?.value.get('dew-point')?.value.tolerance?.value.value).toBe(0.8);
});

describe('the source of an air temperature', () => {
  it.each([
    ['air-temperature-probe', { kind: 'air-temperature-probe' }],
    ['humidity-probe', { kind: 'humidity-probe' }],
    ['60 degC', { kind: 'fixed', temperature: { value: 60 } }],
    ['K2-MT-102', { kind: 'point', tag: 'K2-MT-102' }],
    ['101-MT', { kind: 'point', tag: '101-MT' }],
  ])('%s', (source, expected) => {
    const text = siteWithPoint(`reports: {wet-bulb: {air-temperature: ${source}}}`);
    const point = siteModelOf(read(text).model).points.get('K2-MT-101')?.located?.value;
    expect(point?.reports?.value.get('wet-bulb')?.value.airTemperature?.value).toMatchObject(expected);
  });
});

it.each([
  ['2026-03-14', true],
  ['2024-02-29', true],
  ['2025-02-29', false],
  ['2026-13-01', false],
  ['2026-3-14', false],
  ['', false],
])('“%s” is a date: %s', (text, expected) => {
  expect(isDate(text)).toBe(expected);
});

it.each([
  ['14.03.2026', ['2026-03-14']],
  ['4/3/2026', ['2026-03-04', '2026-04-03']],
  ['3/14/2026', ['2026-03-14']],
  ['2026/3/14', ['2026-03-14']],
  ['2026-03-14T10:00:00Z', ['2026-03-14']],
  ['31.02.2026', []],
  ['March', []],
])('“%s” may mean %j', (text, expected) => {
  expect(likelyDates(text)).toEqual(expected);
});
