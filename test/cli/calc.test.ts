import psychrolib from 'psychrolib';
import { expect, it } from 'vitest';
import { runIn } from '../samples/built-program.ts';
import { SAMPLES_FOLDER } from '../samples/sample-files.ts';

function calc(...words: readonly string[]) {
  return runIn(SAMPLES_FOLDER, 'calc', ...words);
}

it('the state that cli.md asks for, in its units, against psychrolib', () => {
  const { output, status } = calc(
    'air-temperature=60 degC',
    'relative-humidity=85 %RH',
    'pressure=99 kPa',
    '--format',
    'json',
  );
  expect(status).toBe(0);
  const { version, pressure, quantities } = JSON.parse(output);
  expect([version, pressure]).toEqual([1, { value: 99, unit: 'kPa' }]);
  psychrolib.SetUnitSystem(psychrolib.SI);
  // Dew point: in both the enhancement cancels but for its change from 60 to 56.5 °C; psychrolib stops within 0.001 K.
  expect(Math.abs(quantities['dew-point'].value - psychrolib.GetTDewPointFromRelHum(60, 0.85))).toBeLessThan(0.01);
  // Mixing ratio: psychrolib has ideal air; the enhancement factor at 60 °C, 1.0057, and w/(1 − e/p) make 0.7 % of it.
  const ideal = psychrolib.GetHumRatioFromRelHum(60, 0.85, 99_000) * 1000;
  expect(quantities['mixing-ratio'].value / ideal).toBeGreaterThan(1.0055);
  expect(quantities['mixing-ratio'].value / ideal).toBeLessThan(1.009);
  expect(quantities['mixing-ratio'].unit).toBe('g/kg');
});

it('relative humidity and dew point give the air temperature', () => {
  const { output } = calc(
    'relative-humidity=50 %RH',
    'dew-point=13.87 degC',
    'pressure=101.325 kPa',
    '--format',
    'json',
  );
  expect(Math.abs(JSON.parse(output).quantities['air-temperature'].value - 25)).toBeLessThan(0.01);
});

it.each([
  [-49, []],
  [
    -60,
    [
      '-60 °C lies outside the -50 °C to 100 °C that “Enhancement factor over water, Greenspan 1976 and Hardy 1998” is published for.',
    ],
  ],
])('a dew point of %d °C: notes %j', (celsius, notes) => {
  const { output } = calc('air-temperature=20 degC', `dew-point=${celsius} degC`, 'pressure=1 bar', '--format', 'json');
  expect(JSON.parse(output).notes).toEqual(notes);
});

it.each([
  ['101.325 kPa', []],
  ['0 bar(g)', ['A gauge pressure is counted from that of sea level, 101.325 kPa.']],
])('a pressure of %s: notes %j', (pressure, notes) => {
  const words = ['air-temperature=20 degC', 'relative-humidity=50 %RH', `pressure=${pressure}`, '--format', 'json'];
  const answer = JSON.parse(calc(...words).output);
  expect([answer.pressure.value, answer.notes]).toEqual([101.325, notes]);
});

it.each([
  [5, false],
  [-5, true],
])('a dew point of %d °C rests on the formula over supercooled water: %s', (celsius, expected) => {
  const { output } = calc('air-temperature=20 degC', `dew-point=${celsius} degC`, 'pressure=1 bar');
  expect(output.includes('by Saturation pressure over supercooled water, Murphy and Koop 2005\n')).toBe(expected);
});

it.each([
  [['air-temperature=20 degC', 'dew-point=25 degC'], 'The dew point, 25 °C, lies above the air temperature, 20 °C.'],
  [['air-temperature=120 degC', 'relative-humidity=90 %RH', 'pressure=100 kPa'], 'would reach the total pressure'],
  [['air-temperature=20'], 'needs a unit'],
  [['temprature=20 degC'], 'temprature: not a quantity'],
  [['air-temperature=20 degC', 'air-temperature=30 degC'], 'air-temperature: given twice'],
  [['air-temperature=20 degC'], 'Two quantities determine the air besides the pressure; given: 1.'],
  [['vapour-pressure=1 kPa', 'mixing-ratio=7 g/kg'], 'do not determine the air'],
])('%j exits 2 and says why', (words, reason) => {
  const { status, output, errors } = calc(...words);
  expect([status, output]).toEqual([2, '']);
  expect(errors).toContain(reason);
  expect(errors.trimEnd().split('\n')).toHaveLength(1);
});
