import { describe, expect, it } from 'vitest';
import { fileUri } from '../../../server/src/analysis/file-location.ts';
import { Workspace } from '../../../server/src/analysis/workspace.ts';
import { timeToCheck } from '../../../server/src/evaluate/checks/due.ts';
import { dayAfter, secondsBetween } from '../../../server/src/evaluate/facts/calendar.ts';
import { readQuantity } from '../../../server/src/quantity/read-quantity.ts';
import { assessedPoint, factValue } from '../assessed-point.ts';
import { factsById } from '../facts-by-id.ts';

const KILN = '{pressure: 99 kPa, air: {temperature: 60 .. 75 degC, humidity: 40 .. 80 %RH}}';
const HEATED = 'humidity-probe: {model: heated, heater: {mode: continuous, rise: 8 K}}, reports: {dew-point: {}}';

function kiln(checks: string) {
  return assessedPoint({ space: KILN, point: `${HEATED}, checks: {interval: 12 months, ${checks}}` });
}

describe('days', () => {
  it.each([
    ['2026-03-14', '12 months', '2027-03-14'],
    ['2026-01-31', '1 months', '2026-02-28'],
    ['2028-02-29', '1 years', '2029-02-28'],
    ['2026-12-15', '3 months', '2027-03-15'],
    ['2026-09-30', '30 d', '2026-10-30'],
    ['2026-09-30', '36 h', '2026-10-01'],
    ['9999-12-01', '1 years', undefined],
  ])('%s and %s is %s', (day, interval, expected) => {
    const read = readQuantity(interval, 'time');
    if (!read.ok) throw new Error(read.problem.sentence);
    expect(dayAfter(day, read.value.value)).toBe(expected);
  });

  it('2028 has a leap day', () => {
    expect(secondsBetween('2028-02-28', '2028-03-01')).toBe(2 * 86_400);
  });
});

describe('the next check', () => {
  it('ILAC-G24 / OIML D 10, calendar time: one interval after the last', () => {
    const point = kiln('method: laboratory, last: 2025-10-31');
    expect(point.checkPlan.due?.due).toBe('2026-10-31');
    expect(point.facts.get(timeToCheck)?.value).toBe(30 * 86_400);
  });

  it('is not known without a last one', () => {
    expect(kiln('method: laboratory').checkPlan.due).toBeUndefined();
  });

  it('a new day is noticed without a change of any file', () => {
    let today = '2026-10-01';
    const workspace = new Workspace({ today: () => today });
    const file = fileUri('/fennmoor/fennmoor.dewsite.yaml');
    workspace.set(
      file,
      `dewright: 1
site: {id: fennmoor}
spaces: {room: {air: {temperature: 20 degC, humidity: 50 %RH}}}
points: {P-1: {space: room, checks: {interval: 12 months, last: 2025-11-01}}}
`,
    );
    const dueNow = () => workspace.analysis(file)?.findings.some(({ rule }) => rule === 'check-due');
    expect(dueNow()).toBe(false);
    today = '2026-10-02';
    expect(dueNow()).toBe(true);
  });
});

describe('salts', () => {
  const salts = (named: string, at = '25 degC') =>
    kiln(`method: saturated-salt, salts: [${named}], at: ${at}, heater: off`);

  it('OIML R 121:1996 table 1: NaCl and MgCl2 at 25 °C, within the 0.05 %RH that its rounding leaves', () => {
    const point = salts('NaCl, MgCl2');
    expect(Math.abs(factValue(point, 'salt/NaCl/expected-reading') - 0.753)).toBeLessThan(0.0005);
    expect(Math.abs(factValue(point, 'salt/MgCl2/expected-reading') - 0.328)).toBeLessThan(0.0005);
    expect(factValue(point, 'salt/NaCl/expanded-uncertainty')).toBeCloseTo(0.002, 12);
  });

  it('WMO-No. 8 Magnus formula: a sensor heated by 8 K sees e(25 °C)/e(33 °C) = 0.63 of it, within 1 %', () => {
    const magnus = (celsius: number): number => Math.exp((17.62 * celsius) / (243.12 + celsius));
    const point = salts('NaCl');
    const part = factValue(point, 'salt/NaCl/heated-reading') / factValue(point, 'salt/NaCl/expected-reading');
    expect(Math.abs(part / (magnus(25) / magnus(33)) - 1)).toBeLessThan(0.01);
  });

  it('what the sensor sees at work, heated, has to lie between them, give or take 15 %RH', () => {
    expect(salts('MgCl2, NaCl').checkPlan.salts?.leaves).toBe('neither');
    expect(salts('NaCl, K2SO4').checkPlan.salts?.leaves).toBe('dry');
    expect(salts('NaCl, K2SO4').checkPlan.salts?.fitting).toEqual(['MgCl2', 'NaCl']);
  });

  it('a salt outside its valid temperatures has no reading, and nothing is said of the span', () => {
    const point = salts('LiCl, NaCl', '15 degC');
    expect(factsById(point).has('salt/LiCl/expected-reading')).toBe(false);
    expect(point.checkPlan.salts?.leaves).toBeUndefined();
  });
});
