import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analogueCount, registerCount, registerRange } from '../../../server/src/physics/electrical/resolution.ts';
import {
  insulationToBuy,
  roundDownToStep,
  roundStepBelow,
  roundUpToStep,
  sensibleInsertion,
  sensibleRise,
  sensibleSpacing,
  sensibleSpan,
} from '../../../server/src/physics/mathematics/sensible-steps.ts';
import { sensibleClear } from '../../../server/src/physics/metrology/alarm.ts';
import { anyBetween } from '../any-between.ts';

describe('resolution', () => {
  it('IEEE 1241 code width: 100 %RH on 16 of 20 mA, 12 bits: 100·20/16/4096 = 0.0305 %RH', () => {
    expect(analogueCount(100, 16e-3, 20e-3, 12)).toBeCloseTo(0.030518, 6);
  });

  it.each([
    ['int16', -327.68, 327.67],
    ['uint16', 0, 655.35],
    ['int32', -21_474_836.48, 21_474_836.47],
    ['uint32', 0, 42_949_672.95],
  ] as const)('%s in hundredths holds %f to %f', (format, low, high) => {
    const range = registerRange(format, 0.01);
    expect(range.low).toBeCloseTo(low, 6);
    expect(range.high).toBeCloseTo(high, 6);
    expect(registerCount(format, 0.01, 60)).toBe(0.01);
  });

  it('IEEE 754 binary32: no number lies between a value and the next count', () => {
    fc.assert(
      fc.property(anyBetween(-1e6, 1e6), (value) => {
        const stored = Math.fround(value);
        const count = registerCount('float32', 1, stored);
        expect(Math.fround(stored + Math.sign(stored) * count)).toBe(stored + Math.sign(stored) * count);
        // A quarter of a count is lost in storing; at the edge of a binade the counts below are half as wide.
        expect(Math.fround(stored + (Math.sign(stored) * count) / 4)).toBe(stored);
      }),
    );
  });

  it('IEEE 754 binary32 in hundredths: 60 is stored as 6000, of which the next number is 2^−11 away', () => {
    expect(registerCount('float32', 0.01, 60)).toBeCloseTo(0.01 * 2 ** -11, 12);
  });

  it('IEEE 754 binary32 ends at ±3.4028235e38', () => {
    expect(registerRange('float32', 1)).toEqual({ low: -3.4028234663852886e38, high: 3.4028234663852886e38 });
  });
});

describe('what a person would choose', () => {
  it.each([
    [0.3, 0.1, 0.3],
    [0.301, 0.1, 0.4],
    [72.9, 10, 80],
    [-7, 5, -5],
  ])('%f up to steps of %f is %f', (value, step, expected) => {
    expect(roundUpToStep(value, step)).toBe(expected);
  });

  it.each([
    [0.3, 0.1, 0.3],
    [0.301, 0.1, 0.3],
    [72.9, 10, 70],
    [90, 10, 90],
    [-7, 5, -10],
  ])('%f down to steps of %f is %f', (value, step, expected) => {
    expect(roundDownToStep(value, step)).toBe(expected);
  });

  it('rounding never goes the wrong way, and no further than a step', () => {
    const value = anyBetween(-1e4, 1e4);
    fc.assert(
      fc.property(value, fc.constantFrom(0.1, 0.5, 1, 2, 5, 10), (x, step) => {
        const slack = step * 1e-8;
        expect(roundUpToStep(x, step)).toBeGreaterThanOrEqual(x - slack);
        expect(roundUpToStep(x, step)).toBeLessThan(x + step + slack);
        expect(roundDownToStep(x, step)).toBeLessThanOrEqual(x + slack);
        expect(roundDownToStep(x, step)).toBeGreaterThan(x - step - slack);
      }),
    );
  });

  it('insulation comes in the thicknesses sold, and none is thick enough for everything', () => {
    expect(insulationToBuy(0.0202)).toBe(0.025);
    expect(insulationToBuy(0.013)).toBe(0.013);
    expect(insulationToBuy(1)).toBeUndefined();
  });

  it('insertion and spacing go by 10 mm, the rise by 0.5 K and then by 1 K', () => {
    expect(sensibleInsertion(0.0729)).toBe(0.08);
    expect(sensibleSpacing(0.113, 'up')).toBe(0.12);
    expect(sensibleSpacing(0.113, 'down')).toBe(0.11);
    expect(sensibleRise(3.2)).toBe(3.5);
    expect(sensibleRise(8.1)).toBe(9);
  });

  it('an alarm clears on a round figure beyond its hysteresis', () => {
    expect(sensibleClear(95, 'above', 1.4)).toBe(93.5);
    expect(sensibleClear(95, 'above', 2.3)).toBe(92);
    expect(sensibleClear(94.5, 'above', 1.9)).toBe(92.5);
    expect(sensibleClear(94.5, 'above', 2)).toBe(92);
    expect(sensibleClear(20, 'below', 1.4)).toBe(21.5);
  });

  it.each([
    [10.16, 10],
    [9.99, 5],
    [5, 5],
    [4.99, 2],
    [2, 2],
    [1.99, 1],
    [0.2, 0.2],
    [0.049, 0.02],
    [1000, 1000],
  ])('1-2-5 step no more than %f: %f', (size, step) => {
    expect(roundStepBelow(size)).toBe(step);
  });

  it('a span holds its range, on round ends, and wastes no more than two fifths of it', () => {
    expect(sensibleSpan(37.3, 88.1)).toEqual({ low: 30, high: 90 });
    expect(sensibleSpan(20, 20)).toEqual({ low: 20, high: 20 });
    const end = fc.integer({ min: -4000, max: 4000 });
    fc.assert(
      fc.property(end, end, (one, other) => {
        const [low, high] = [Math.min(one, other) / 10, Math.max(one, other) / 10];
        const span = sensibleSpan(low, high);
        expect(span.low).toBeLessThanOrEqual(low + 1e-6);
        expect(span.high).toBeGreaterThanOrEqual(high - 1e-6);
        expect(span.high - span.low).toBeLessThanOrEqual((high - low) * 1.4 + 1e-6);
      }),
    );
  });
});
