import { describe, expect, it } from 'vitest';
import { hoverAt } from '../../server/src/features/reading/hover.ts';
import { openAt } from './marked-files.ts';

const KIT = `dewright: 1
kit: {id: models}
humidity-probes:
  plain: {accuracy: [{relative-humidity: 1.6 %RH, coverage: 2}], drift: 0.5 %RH/year, head-temperature: 0.2 K}
receivers: {plc: {input: 4 .. 20 mA, bits: 12}}
`;

const SITE = `dewright: 1
site: {id: fennmoor, kits: [models.dewkit.yaml], defaults: {receiver: plc}}
spaces:
  store: {pressure: 100 kPa, air: {temperature: 18 .. 22 degC, humidity: 40 .. 60 %RH}}
points:
  FS-MT-201:
    space: store
    humidity-probe: {model: plain}
    reports:
      relative-humidity: {tolerance: 2.5 %RH}
    signals:
      AO1: {kind: current-loop, quantity: relative-humidity, span: 0 .. 100 %RH, on-fault: 21 mA}
    alarms:
      too-wet: {quantity: relative-humidity, above: 58 %RH, clear: 56 %RH}
    checks: {interval: 12 months, method: saturated-salt, salts: [MgCl2, NaCl], at: 25 degC, last: 2026-09-01}
`;

function hover(before: string): string {
  const at = SITE.indexOf(before);
  const marked = `${SITE.slice(0, at)}|${SITE.slice(at)}`;
  const { analysis, offset } = openAt('store.dewsite.yaml', marked, { 'models.dewkit.yaml': KIT });
  return hoverAt(analysis, offset)?.markdown ?? '';
}

describe('on a report', () => {
  const text = hover('relative-humidity: {tolerance');

  it('the budget stands as a table, the largest contribution first', () => {
    const rows = text.split('\n').filter((line) => line.startsWith('|'));
    expect(rows[0]).toBe('| contribution | u | in the relative humidity | share |');
    // By hand: 1.6/2 = 0.8; 0.5/√3 = 0.29; half of 100/2^12, over √3, = 0.007. Together 0.85, k = 2: 1.7 %RH.
    expect(rows[2]).toBe('| accuracy of the humidity sensor | 0.8 %RH | 0.8 %RH | 88.5 % |');
    expect(rows[3]).toBe('| drift of the humidity sensor since its check | 0.29 %RH | 0.29 %RH | 11.5 % |');
    expect(rows.at(-2)).toBe('| **combined** |  | **0.85 %RH** |  |');
    expect(rows.at(-1)).toBe('| **expanded, k = 2** |  | **1.7 %RH** |  |');
  });

  it('it says what weighs most, what helps most, and what becomes of the tolerance', () => {
    expect(text).toMatch(/accuracy of the humidity sensor weighs most; a more accurate humidity probe would leave/);
    expect(text).toMatch(/tolerance of 2\.5 %RH is met, the uncertainty allowed for; 99\.7 % of readings/);
    expect(text).toMatch(/Not counted, so that this is the least: .*wall/);
  });
});

it('on a span there is the value of one count', () => {
  expect(hover('0 .. 100 %RH')).toMatch(/Value of one count of AO1: \*\*0\.024 %RH\*\*/);
});

it('on the limit of an alarm there are both of its error probabilities', () => {
  // Φ(−2.5/0.8507) = Φ(−2.939), by Abramowitz and Stegun, table 26.1.
  expect(hover('58 %RH')).toMatch(/stays silent[^*]*\*\*0\.16 %\*\*/);
  expect(hover('58 %RH')).toMatch(/sounds[^*]*\*\*0\.16 %\*\*/);
});

it('on a salt there is the reading to expect, with its uncertainty', () => {
  expect(hover('NaCl')).toMatch(/Reading to expect over NaCl: \*\*75\.3 %RH\*\*/);
  expect(hover('NaCl')).toMatch(/Expanded uncertainty of the humidity over NaCl: \*\*0\.2 %RH\*\*/);
});

it('on the name of a signal there is what it carries', () => {
  expect(hover('AO1')).toMatch(/Highest value that AO1 carries: \*\*100 %RH\*\*/);
});
