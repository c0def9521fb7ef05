import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  platinumClassLimits,
  platinumResistance,
  platinumSensitivity,
  platinumTemperature,
  platinumTolerance,
} from '../../server/src/physics/platinum-thermometer.ts';
import { centralDifference, relativeDifference, steps } from './numeric.ts';

it.each([
  [-200, 18.52],
  [-100, 60.26],
  [0, 100],
  [100, 138.51],
  [200, 175.86],
  [300, 212.05],
  [400, 247.09],
  [500, 280.98],
  [600, 313.71],
  [650, 329.64],
])('IEC 60751 table 1, %d °C: %d Ω to the last printed digit', (celsius, published) => {
  expect(Math.abs(platinumResistance(celsius) - published)).toBeLessThanOrEqual(0.005);
});

it('resistance to temperature and back, −200 to 850 °C: within 1e-9 K', () => {
  fc.assert(
    fc.property(fc.double({ min: -200, max: 850, noNaN: true }), (celsius) => {
      const found = platinumTemperature(platinumResistance(celsius));
      expect(found.ok && Math.abs(found.value - celsius)).toBeLessThan(1e-9);
    }),
  );
});

it('the sensitivity is the derivative of the resistance', () => {
  for (const celsius of steps(-199.5, 849.5, 7)) {
    // ±0.01 K: truncation 1e-9, rounding 1e-12.
    const expected = centralDifference(platinumResistance, celsius, 0.01);
    expect(relativeDifference(platinumSensitivity(celsius), expected)).toBeLessThan(1e-7);
  }
});

it('a resistance that no Pt100 has is refused', () => {
  for (const resistance of [10, 400, Number.NaN]) {
    expect(platinumTemperature(resistance)).toMatchObject({
      ok: false,
      problem: { kind: 'outside-formula', argument: 'resistance', formula: { id: 'platinum-resistance' } },
    });
  }
});

describe('tolerance classes', () => {
  it.each([
    [-200, 0.55, 1.3],
    [-100, 0.35, 0.8],
    [0, 0.15, 0.3],
    [100, 0.35, 0.8],
    [200, 0.55, 1.3],
    [300, 0.75, 1.8],
    [600, 1.35, 3.3],
    [650, 1.45, 3.6],
  ])('IEC 60751 tolerance table, %d °C: class A %d K, class B %d K', (celsius, classA, classB) => {
    expect(platinumTolerance('A', celsius)).toBeCloseTo(classA, 12);
    // Class B is printed to one decimal: 3.55 K at 650 °C stands as 3.6 K.
    expect(Math.abs(platinumTolerance('B', celsius) - classB)).toBeLessThan(0.0501);
  });

  it('IEC 60751 tolerance table in Ω: 0.13 Ω for class A at 100 °C, 0.12 Ω for class B at 0 °C', () => {
    expect(platinumTolerance('A', 100) * platinumSensitivity(100)).toBeCloseTo(0.13, 2);
    expect(platinumTolerance('B', 0) * platinumSensitivity(0)).toBeCloseTo(0.12, 2);
  });

  it('the limits nest: a finer class holds over no wider a range (limits from memory)', () => {
    const classes = ['AA', 'A', 'B', 'C'] as const;
    for (const element of ['wire-wound', 'film'] as const) {
      const limits = classes.map((tolerance) => platinumClassLimits(tolerance, element));
      limits.slice(1).forEach((wider, index) => {
        expect(wider.lowestCelsius).toBeLessThanOrEqual(limits[index]?.lowestCelsius ?? Number.NaN);
        expect(wider.highestCelsius).toBeGreaterThanOrEqual(limits[index]?.highestCelsius ?? Number.NaN);
      });
    }
    expect(platinumClassLimits('A', 'film')).toEqual({ lowestCelsius: -30, highestCelsius: 300 });
  });
});
