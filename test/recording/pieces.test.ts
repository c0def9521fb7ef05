import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { histogram } from '../../server/src/recording/fold/histogram.ts';
import { recordedState } from '../../server/src/recording/fold/recorded-state.ts';
import { type Cell, rowCells } from '../../server/src/recording/fold/row-cells.ts';
import { usualStep } from '../../server/src/recording/fold/time-steps.ts';

describe('a histogram', () => {
  it('gives the quantiles of a sorted list within its bin', () => {
    const values = fc.array(fc.double({ min: -50, max: 400, noNaN: true }), { minLength: 1, maxLength: 200 });
    fc.assert(
      fc.property(values, fc.constantFrom(0.005, 0.25, 0.5, 0.95, 1), (list, share) => {
        const width = 0.05;
        const counted = histogram(width);
        for (const value of list) counted.add(value, 2);
        const sorted = list.toSorted((one, other) => one - other);
        const exact = sorted[Math.max(0, Math.ceil(share * list.length - 1e-9) - 1)] ?? 0;
        expect(Math.abs((counted.quantile(share) ?? Number.NaN) - exact)).toBeLessThanOrEqual(width * 1.0001);
      }),
    );
  });

  it('keeps its size for values beyond all sense, and has no quantile while it is empty', () => {
    const counted = histogram(1e-4);
    expect(counted.quantile(0.5)).toBeUndefined();
    counted.add(0.1, 1);
    counted.add(1e9, 1);
    expect(counted.quantile(0.25)).toBeCloseTo(0.1, 3);
  });

  it('tells the edge that leaves so much time beyond it', () => {
    const counted = histogram(1);
    for (const value of [1.5, 2.5, 3.5, 9.5]) counted.add(value, 10);
    expect(counted.edgeLeaving(10, 'above')).toBe(4);
    expect(counted.edgeLeaving(9, 'above')).toBe(10);
    expect(counted.edgeLeaving(10, 'below')).toBe(2);
    expect(counted.edgeLeaving(40, 'above')).toBeUndefined();
  });
});

it('cells hold every row once, however often they are thrown out of their place', () => {
  const rows = fc.array(fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 300 })), { minLength: 1 });
  fc.assert(
    fc.property(rows, (list) => {
      const settled = new Map<string, number>();
      const cells = rowCells(
        () => undefined,
        ({ airCelsius, humidity, rows }: Cell) => {
          const key = `${airCelsius} ${humidity}`;
          settled.set(key, (settled.get(key) ?? 0) + rows);
        },
      );
      const expected = new Map<string, number>();
      for (const [air, humidity] of list) {
        cells.of(0, air / 10, humidity / 10, 101_325);
        const key = `${air / 10} ${humidity / 10}`;
        expected.set(key, (expected.get(key) ?? 0) + 1);
      }
      cells.finish();
      expect(settled).toEqual(expected);
    }),
  );
});

it('the usual step is the median of the steps forward', () => {
  expect(usualStep([0, 1, 2, 3, 100, 101, 90, 91])).toBe(1);
  expect(usualStep([5])).toBe(0);
});

it('air up to 105 %RH counts as saturated, and beyond it cannot be', () => {
  expect(recordedState(60, 101_325, 'relative-humidity', 1.05)).toMatchObject({ takenAsSaturated: true });
  expect(recordedState(60, 101_325, 'relative-humidity', 1.051)).toBeUndefined();
  expect(recordedState(60, 101_325, 'dew-point', 61)).toMatchObject({ takenAsSaturated: true, dewPointCelsius: 60 });
  expect(recordedState(60, 101_325, 'dew-point', 62)).toBeUndefined();
  expect(recordedState(120, 101_325, 'relative-humidity', 0.9)).toBeUndefined();
});

it('every humidity that a log may have gives the same air', () => {
  // The values are those of one state, 60 °C and a dew point of 50 °C at 101325 Pa, by `dewright calc`.
  const state = recordedState(60, 101_325, 'dew-point', 50);
  const vapourPressure = state?.air.vapourPressure ?? 0;
  const same = [
    recordedState(60, 101_325, 'vapour-pressure', vapourPressure),
    recordedState(60, 101_325, 'mixing-ratio', state?.values['mixing-ratio'] ?? 0),
    recordedState(60, 101_325, 'relative-humidity', state?.values['relative-humidity'] ?? 0),
    recordedState(60, 101_325, 'dew-point-depression', 10),
  ];
  for (const other of same) expect(other?.dewPointCelsius).toBeCloseTo(50, 6);
});
