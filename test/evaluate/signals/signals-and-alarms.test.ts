import { describe, expect, it } from 'vitest';
import { showQuantity } from '../../../server/src/quantity/format-quantity.ts';
import { assessedPoint, factValue, worstBudget } from '../assessed-point.ts';
import { factsById } from '../facts-by-id.ts';

const KILN =
  '{pressure: 99 kPa, air: {temperature: 60 .. 75 degC, humidity: 40 .. 80 %RH, speed: 2 m/s}, gradient: 0.5 K/m}';
const POINT = `humidity-probe: {model: heated, heater: {mode: continuous, rise: 6 K}, mounting: {insertion: 200 mm}},
    air-temperature-probe: {model: slim, mounting: {insertion: 180 mm, spacing: 120 mm, position: beside}},
    reports: {relative-humidity: {air-temperature: air-temperature-probe, tolerance: 3 %RH}, dew-point: {}, air-temperature: {air-temperature: air-temperature-probe}},
    checks: {interval: 12 months, method: reference-instrument, last: 2026-09-01}`;

function kiln(more: string) {
  return assessedPoint({ space: KILN, point: `${POINT}, ${more}` });
}

describe('signals', () => {
  it('IEEE 1241 ideal code width: 0 to 100 %RH as 4 to 20 mA into 14 bits is 0.0061 %RH a count', () => {
    const point = kiln(
      'signals: {AO1: {kind: current-loop, quantity: relative-humidity, span: 0 .. 100 %RH, receiver: input-14}}',
    );
    expect(factValue(point, 'signal/AO1/one-count')).toBeCloseTo(1 / 2 ** 14, 15);
    expect(factValue(point, 'signal/AO1/resolution-error')).toBeCloseTo(1 / 2 ** 15, 15);
    expect(factValue(point, 'signal/AO1/span-used')).toBeCloseTo(0.4, 12);
  });

  it('a voltage is not read by an input for currents: its count is not known', () => {
    const point = kiln(
      'signals: {AO1: {kind: voltage, quantity: relative-humidity, span: 0 .. 100 %RH, receiver: input-14}}',
    );
    expect(factsById(point).has('signal/AO1/one-count')).toBe(false);
  });

  it('int16 hundredths of a degree hold −327.68 to 327.67 °C', () => {
    const point = kiln(
      'signals: {HR1: {kind: register, quantity: dew-point, address: 1, format: int16, scale: 0.01 degC}}',
    );
    expect(factValue(point, 'signal/HR1/lowest-value')).toBeCloseTo(-327.68, 10);
    expect(factValue(point, 'signal/HR1/highest-value')).toBeCloseTo(327.67, 10);
  });

  it('tenths of a degree Fahrenheit count from 0 °F: −3276.8 °F is −1838.2 °C, and one is 0.056 K', () => {
    const point = kiln(
      'signals: {HR1: {kind: register, quantity: dew-point, address: 1, format: int16, scale: 0.1 degF}}',
    );
    expect(factValue(point, 'signal/HR1/lowest-value')).toBeCloseTo(((-3276.8 - 32) * 5) / 9, 9);
    expect(factValue(point, 'signal/HR1/one-count')).toBeCloseTo(0.1 / 1.8, 12);
  });

  it('IEEE 754 binary32: between 64 and 128 the numbers are 2^−17 apart', () => {
    const point = kiln(
      'signals: {HR1: {kind: register, quantity: air-temperature, address: 1, format: float32, scale: 1 degC}}',
    );
    expect(factValue(point, 'signal/HR1/one-count')).toBe(2 ** -17);
  });
});

describe('alarms', () => {
  const point = kiln('alarms: {too-wet: {quantity: relative-humidity, above: 78 %RH, clear: 75 %RH}}');

  it('the uncertainty is that of the air that takes the quantity near the limit', () => {
    const { at } = factsById(point).get('alarm/too-wet/missed-alarm') ?? {};
    expect(at?.relativeHumidity).toBeGreaterThan(0.78 - 0.03);
  });

  it('JCGM 106, normal distribution: a limit set as wanted misses as often as it cries wolf', () => {
    expect(factValue(point, 'alarm/too-wet/missed-alarm')).toBe(factValue(point, 'alarm/too-wet/false-alarm'));
  });

  it('Abramowitz and Stegun table 26.1: one tolerance of 1.645 standard uncertainties is missed in 5 %', () => {
    const wide = worstBudget(kiln('alarms: {}'), 'relative-humidity').standardUncertainty;
    const tolerance = showQuantity(1.645 * wide, 'relative-humidity');
    const judged = assessedPoint({
      space: KILN,
      point: `${POINT.replace('3 %RH', tolerance)}, alarms: {too-wet: {quantity: relative-humidity, above: 80 %RH}}`,
    });
    // The tolerance is written with one decimal: 0.05 %RH of 1.5 %RH moves the tail by 0.6 %.
    expect(Math.abs(factValue(judged, 'alarm/too-wet/missed-alarm') - 0.05)).toBeLessThan(0.006);
  });

  it('ISO 5725-6: the least hysteresis is 2.8 times what changes from reading to reading', () => {
    const near = worstBudget(point, 'relative-humidity');
    const part = (kind: string): number =>
      near.contributions.find((contribution) => contribution.kind === kind)?.resultUncertainty ?? 0;
    const noise = Math.hypot(part('sensor-accuracy') / 3, part('gradient'));
    expect(factValue(point, 'alarm/too-wet/least-hysteresis')).toBeCloseTo(2.8 * noise, 12);
  });

  it('the clearing value is rounded as a person would: 0.6 %RH of noise under 78 %RH is 77 %RH', () => {
    expect(showQuantity(factValue(point, 'alarm/too-wet/clear-to-set'), 'relative-humidity')).toBe('77 %RH');
  });

  it('a quantity without a budget gives no alarm facts', () => {
    const heated = 'humidity-probe: {model: heated, heater: {mode: continuous, rise: 6 K}}';
    const unassigned = assessedPoint({
      space: KILN,
      point: `${heated}, reports: {relative-humidity: {tolerance: 3 %RH}}, alarms: {too-wet: {quantity: relative-humidity, above: 78 %RH}}`,
    });
    expect([...factsById(unassigned).keys()].filter((id) => id.startsWith('alarm/too-wet/'))).toEqual([]);
  });
});

describe('names of alarms, signals and salts are the author’s own', () => {
  it.each(['alarms', 'signals'])(
    'one of the %s that is called like a report leaves the facts of the report alone',
    (map) => {
      const report = 'relative-humidity/expanded-uncertainty';
      const entry =
        map === 'alarms'
          ? '{quantity: relative-humidity, above: 78 %RH}'
          : '{kind: current-loop, quantity: relative-humidity, span: 0 .. 100 %RH}';
      const plain = kiln(`${map}: {other: ${entry}}`);
      const named = kiln(`${map}: {relative-humidity: ${entry}}`);
      expect(factsById(named).size).toBe(factsById(plain).size);
      expect(factValue(named, report)).toBe(factValue(plain, report));
    },
  );

  it('an alarm and a signal of one name keep their facts apart', () => {
    const alarm = 'alarms: {AO1: {quantity: dew-point, above: 70 degC}}';
    const signal = 'signals: {AO1: {kind: current-loop, quantity: dew-point, span: 0 .. 100 degC}}';
    const [both, one, other] = [kiln(`${alarm}, ${signal}`), kiln(alarm), kiln(signal)];
    const own = (facts: ReadonlyMap<string, unknown>): number => facts.size - factsById(kiln('alarms: {}')).size;
    expect(own(factsById(both))).toBe(own(factsById(one)) + own(factsById(other)));
  });
});
