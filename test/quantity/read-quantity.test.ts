import { describe, expect, it } from 'vitest';
import { DIMENSIONS, type Dimension } from '../../server/src/quantity/dimension.ts';
import { calendarMonths } from '../../server/src/quantity/quantity.ts';
import { notNegative, readQuantity, readRange } from '../../server/src/quantity/read-quantity.ts';

describe('a value with a unit', () => {
  it.each<[string, Dimension, number]>([
    ['60 degC', 'temperature', 60],
    ['60 °C', 'temperature', 60],
    ['140 degF', 'temperature', 60],
    ['333.15 K', 'temperature', 60],
    ['-40degC', 'temperature', -40],
    ['+.5 K', 'temperature-difference', 0.5],
    ['85 %RH', 'relative-humidity', 0.85],
    ['85 %', 'relative-humidity', 0.85],
    ['0.1 %', 'percentage', 0.001],
    ['1013.25 hPa', 'pressure', 101_325],
    ['1013.25 mbar', 'pressure', 101_325],
    ['1.2e5 Pa', 'pressure', 120_000],
    ['0.5 mm²', 'area', 5e-7],
    ['4.7 kohm', 'resistance', 4700],
    ['250 Ω', 'resistance', 250],
    ['21 mA', 'current', 0.021],
    ['30 g/m³', 'absolute-humidity', 0.03],
    ['0.5 K/min', 'temperature-rate', 0.5 / 60],
    ['5. degC', 'temperature', 5],
    ['  2 m/s ', 'speed', 2],
  ])('“%s” as %s is %d in the canonical unit', (text, dimension, expected) => {
    const read = readQuantity(text, dimension);
    // Only the rounding of one multiplication and one addition in double precision.
    expect(read.ok && read.value.value.value).toBeCloseTo(expected, 12);
  });

  it('NIST SP 811 table B.8: 1 psi is 6894.757 Pa', () => {
    const read = readQuantity('1 psi', 'pressure');
    expect(read.ok && read.value.value.value).toBeCloseTo(6894.757, 3);
  });

  it.each<[Dimension]>((Object.keys(DIMENSIONS) as Dimension[]).map((dimension) => [dimension]))(
    'the example of %s reads as what it is an example of',
    (dimension) => {
      const { example } = DIMENSIONS[dimension];
      expect(readQuantity(example, dimension)).toMatchObject({ ok: true, value: { value: { dimension } } });
    },
  );

  it('a gauge pressure keeps its mark, and may be below zero', () => {
    expect(readQuantity('1.2 bar(g)', 'pressure')).toMatchObject({ value: { value: { value: 120_000, gauge: true } } });
    expect(readQuantity('-5 kPa (g)', 'pressure')).toMatchObject({ value: { value: { value: -5000, gauge: true } } });
    expect(readQuantity('120 kPa', 'pressure')).toMatchObject({ value: { value: { value: 120_000, gauge: false } } });
  });

  it('months and years count by the calendar, hours and days do not', () => {
    const monthsOf = (text: string): number | undefined => {
      const read = readQuantity(text, 'time');
      return read.ok ? calendarMonths(read.value.value) : undefined;
    };
    expect(['12 months', '1 month', '2 years', '1 year', '365 d', '24 h'].map(monthsOf)).toEqual([
      12,
      1,
      24,
      12,
      undefined,
      undefined,
    ]);
  });

  it('a difference in degrees is read, and noticed at the place of its unit', () => {
    expect(readQuantity('8 °C', 'temperature-difference')).toMatchObject({
      ok: true,
      value: {
        value: { value: 8 },
        notice: { kind: 'difference-in-degrees', range: { start: 2, end: 4 }, suggestion: '8 K' },
      },
    });
  });
});

describe('a range', () => {
  it.each<[string, Dimension, number, number]>([
    ['35 .. 88 %RH', 'relative-humidity', 0.35, 0.88],
    ['35..88%RH', 'relative-humidity', 0.35, 0.88],
    ['-40 .. -10.5 degC', 'temperature', -40, -10.5],
    ['2 m/s', 'speed', 2, 2],
    ['6 .. 8 bar(g)', 'pressure', 600_000, 800_000],
  ])('“%s” runs from %s %d to %d', (text, dimension, low, high) => {
    const read = readRange(text, dimension);
    // Only the rounding of one multiplication in double precision.
    expect(read.ok && read.value.value.low).toBeCloseTo(low, 12);
    expect(read.ok && read.value.value.high).toBeCloseTo(high, 12);
  });
});

/** What cannot be read: the text, its dimension, the stretch that is marked, the sentence, the suggestions. */
type Row = readonly [text: string, dimension: Dimension, marked: string, sentence: string, suggestions: string];

const UNREADABLE: readonly Row[] = [
  ['warm', 'temperature', 'warm', '“warm” is not a temperature, such as “60 degC”', ''],
  ['', 'speed', '', '“” is not an air speed, such as “2 m/s”', ''],
  ['60', 'temperature', '60', '“60” needs a unit: degC, degF, K', '60 degC; 60 degF; 60 K'],
  ['60 C', 'temperature', 'C', '“C” is no unit of a temperature; it is written in degC, degF, K', '60 degC'],
  ['80 %rh', 'relative-humidity', '%rh', '“%rh” is no unit of a relative humidity; it is written in %RH', '80 %RH'],
  ['99 Kpa', 'pressure', 'Kpa', undefinedUnit('Kpa'), '99 kPa'],
  ['6 barg', 'pressure', 'barg', undefinedUnit('barg'), '6 bar(g)'],
  ['6 bar(a)', 'pressure', 'bar(a)', undefinedUnit('bar(a)'), '6 bar'],
  ['5 hours', 'time', 'hours', '“hours” is no unit of a time; it is written in s, ms, min, h, d, months, years', '5 h'],
  [
    '8 W',
    'temperature-difference',
    'W',
    '“8 W” is a power, and a temperature difference is expected here, such as “2 K”',
    '',
  ],
  [
    '6 bar(g)',
    'temperature',
    'bar',
    '“6 bar(g)” is a pressure, and a temperature is expected here, such as “60 degC”',
    '',
  ],
  ['-300 degC', 'temperature', '-300', '“-300 degC” is below the least value that a temperature can have', ''],
  [
    '99999 K',
    'temperature-difference',
    '99999',
    '“99999 K” is more than a temperature difference can be in such a place',
    '',
  ],
  ['-1 m/s', 'speed', '-1', '“-1 m/s” is below the least value that an air speed can have', ''],
  ['1e400 Pa', 'pressure', '1e400', 'The number “1e400 Pa” is too large', ''],
  ['4 .. 20 mA', 'current', '4 .. 20', 'One value is expected here, not a range', '4 mA; 20 mA'],
  ['1 .. 2 bar(g)', 'pressure', '1 .. 2', 'One value is expected here, not a range', '1 bar(g); 2 bar(g)'],
  [
    '0,5 %RH',
    'relative-humidity',
    '0,5 %RH',
    '“0,5 %RH” has a decimal comma; numbers here are written with a point',
    '0.5 %RH',
  ],
  [
    '60,5 C',
    'temperature',
    '60,5 C',
    '“60,5 C” has a decimal comma; numbers here are written with a point',
    '60.5 degC',
  ],
  [
    '1,013 hPa',
    'pressure',
    '1,013 hPa',
    '“1,013 hPa” has a decimal comma; numbers here are written with a point',
    '1.013 hPa; 1013 hPa',
  ],
  [
    '1 013 hPa',
    'pressure',
    '1 013 hPa',
    '“1 013 hPa” has a gap in its number; numbers here are written in one piece',
    '1013 hPa',
  ],
  [
    '\u221240 degC',
    'temperature',
    '\u221240 degC',
    '“\u221240 degC” has a dash that is no minus sign here; it is typed as a hyphen',
    '-40 degC',
  ],
  ['1,2,3', 'temperature', '1,2,3', '“1,2,3” is not a temperature, such as “60 degC”', ''],
  ['12.5.3 degC', 'temperature', '12.5.3 degC', '“12.5.3 degC” is not a temperature, such as “60 degC”', ''],
];

function undefinedUnit(symbol: string): string {
  return `“${symbol}” is no unit of a pressure; it is written in kPa, Pa, hPa, mbar, bar, MPa, psi`;
}

describe('a value that cannot be read', () => {
  it.each(UNREADABLE)('“%s” as %s', (text, dimension, marked, sentence, suggestions) => {
    const read = readQuantity(text, dimension);
    if (read.ok) throw new Error('it was read');
    const { range } = read.problem;
    expect([text.slice(range.start, range.end), read.problem.sentence, read.problem.suggestions.join('; ')]).toEqual([
      marked,
      sentence,
      suggestions,
    ]);
  });

  it.each<[string, Dimension]>(UNREADABLE.map(([text, dimension]) => [text, dimension]))(
    'what is suggested for “%s” as %s can be read',
    (text, dimension) => {
      const read = readQuantity(text, dimension);
      const suggestions = read.ok ? [] : read.problem.suggestions;
      expect(suggestions.filter((suggested) => !readQuantity(suggested, dimension).ok)).toEqual([]);
    },
  );
});

describe('a range that cannot be read', () => {
  it.each<[string, string, string]>([
    ['78 .. 55 degC', 'The range runs from 78 down to 55; the lower value comes first', '55 .. 78 degC'],
    ['88.0..35 degC', 'The range runs from 88.0 down to 35; the lower value comes first', '35 .. 88.0 degC'],
    ['5 … 32 degC', '“5 … 32 degC” is no range; a range is written LOW .. HIGH UNIT', '5 .. 32 degC'],
    ['5...32 degC', '“5...32 degC” is no range; a range is written LOW .. HIGH UNIT', '5 .. 32 degC'],
    ['5 ... 32 degC', '“5 ... 32 degC” is no range; a range is written LOW .. HIGH UNIT', '5 .. 32 degC'],
    ['5 – 32 degC', '“5 – 32 degC” is no range; a range is written LOW .. HIGH UNIT', '5 .. 32 degC'],
    ['5-32 degC', '“5-32 degC” is no range; a range is written LOW .. HIGH UNIT', '5 .. 32 degC'],
    ['5 to 32 degC', '“5 to 32 degC” is no range; a range is written LOW .. HIGH UNIT', '5 .. 32 degC'],
    [
      '\u22125 … 12,5 degC',
      '“\u22125 … 12,5 degC” is no range; a range is written LOW .. HIGH UNIT',
      '-5 .. 12.5 degC',
    ],
    [
      '60,5 .. 80,5 degC',
      '“60,5 .. 80,5 degC” has a decimal comma; numbers here are written with a point',
      '60.5 .. 80.5 degC',
    ],
    ['5 .. 32', '“5 .. 32” needs a unit: degC, degF, K', '5 .. 32 degC; 5 .. 32 degF; 5 .. 32 K'],
  ])('“%s”', (text, sentence, suggestions) => {
    const read = readRange(text, 'temperature');
    expect(read.ok ? '' : [read.problem.sentence, read.problem.suggestions.join('; ')]).toEqual([
      sentence,
      suggestions,
    ]);
  });

  it('a gauge pressure the wrong way round keeps its mark when it is turned', () => {
    const read = readRange('8 .. 6 bar(g)', 'pressure');
    expect(read.ok ? [] : read.problem.suggestions).toEqual(['6 .. 8 bar(g)']);
  });
});

it.each<[string, Dimension, string, string]>([
  ['210', 'length', '210 m', 'm'],
  ['0.12', 'length', '120 mm', 'm'],
  ['120', 'length', '120 mm', 'mm'],
  ['1013', 'pressure', '99 kPa', 'hPa'],
  ['99', 'pressure', '99 kPa', 'kPa'],
  ['7', 'pressure', '6 .. 8 bar(g)', 'bar'],
  ['140', 'temperature', '55 .. 78 degC', 'degC'],
  ['12', 'time', '12 months', 'months'],
  ['365', 'time', '12 months', 'd'],
  ['60', 'time', '60 s', 's'],
  ['4000', 'power', '4 W', 'mW'],
  ['0', 'power', '4 W', 'W'],
  ['3', 'temperature-difference', '3 %RH', 'K'],
])('a bare %s, a %s, where “%s” is usual is most likely in %s', (text, dimension, example, unit) => {
  const read = readQuantity(text, dimension, example);
  expect(read.ok ? undefined : read.problem.suggestions[0]).toBe(`${text} ${unit}`);
});

describe('a value that cannot be below zero', () => {
  it.each(['0 K', '8 K', '8'])('stays as it was read: %s', (text) => {
    const read = readQuantity(text, 'temperature-difference');
    expect(notNegative(read, text)).toBe(read);
  });

  it('is told below zero, with the value that was likely meant', () => {
    expect(notNegative(readQuantity('-8 K', 'temperature-difference'), '-8 K')).toMatchObject({
      problem: {
        kind: 'negative',
        sentence: '“-8 K” is below zero, which this value cannot be',
        range: { start: 0, end: 4 },
        suggestions: ['8 K'],
      },
    });
  });
});
