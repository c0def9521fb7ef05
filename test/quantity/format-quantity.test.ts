import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DIMENSIONS, type Dimension } from '../../server/src/quantity/dimension.ts';
import {
  formatNumber,
  showEstimate,
  showQuantity,
  showRange,
  showShare,
  writeQuantity,
  writeRange,
} from '../../server/src/quantity/format-quantity.ts';
import { readQuantity, readRange } from '../../server/src/quantity/read-quantity.ts';

it.each<[number, number, string]>([
  [0, 1, '0'],
  [56.4321, 1, '56.4'],
  [56.02, 1, '56'],
  [99.97, 1, '100'],
  [0.0437, 1, '0.044'],
  [0.996, 1, '1'],
  [-0.04, 1, '-0.04'],
  [-1e-14, 1, '0'],
  [1200, 0, '1200'],
])('%d with at most %d decimals, but two significant digits, is “%s”', (value, decimals, text) => {
  expect(formatNumber(value, decimals)).toBe(text);
});

it.each<[number, number, Dimension, string]>([
  [10.05762, 0.027, 'resistance', '10.058 ± 0.027 Ω'],
  [-0.017, 0.0062, 'relative-humidity', '-1.70 ± 0.62 %RH'],
  [-0.0001, 0.0123, 'relative-humidity', '0.0 ± 1.2 %RH'],
  [0.4, 12.3, 'temperature-difference', '0 ± 12 K'],
  [0.5, 0, 'temperature-difference', '0.5 ± 0.0 K'],
])('JCGM 100, 7.2.6: %d ± %d of %s is “%s”, the first one its own example', (value, halfWidth, dimension, text) => {
  expect(showEstimate(value, halfWidth, dimension)).toBe(text);
});

it.each<[number, string]>([
  [0.6258, '62.6 %'],
  [1.4, '140 %'],
  [9.99, '999 %'],
  [10.014, '10 ×'],
  [247.6, '248 ×'],
])('%d of the whole is shown as “%s”', (share, text) => {
  expect(showShare(share)).toBe(text);
});

it.each<[number, Dimension, string, string]>([
  [56.43, 'temperature', '56.4 °C', '56.4 degC'],
  [0.6123, 'relative-humidity', '61.2 %RH', '61.2 %RH'],
  [611.657, 'pressure', '612 Pa', '612 Pa'],
  [7384.4, 'pressure', '7.384 kPa', '7.384 kPa'],
  [98_825, 'pressure', '98.83 kPa', '98.83 kPa'],
  [0.12, 'length', '120 mm', '120 mm'],
  [60, 'length', '60 m', '60 m'],
  [7.5e-7, 'area', '0.75 mm²', '0.75 mm2'],
  [250, 'resistance', '250 Ω', '250 ohm'],
  [0.0041, 'mixing-ratio', '4.1 g/kg', '4.1 g/kg'],
  [15, 'time', '15 s', '15 s'],
  [5400, 'time', '90 min', '90 min'],
  [86_400 * 30, 'time', '30 d', '30 d'],
  [365.2425 * 86_400, 'time', '12 months', '12 months'],
  [0.00021, 'temperature-difference', '0.00021 K', '0.00021 K'],
  [2.8e-6, 'temperature-difference', '< 0.0001 K', '0.0000028 K'],
  [-6.1e-12, 'relative-humidity', '> -0.0001 %RH', '-0.00000000061 %RH'],
  [0, 'relative-humidity', '0 %RH', '0 %RH'],
])('%d as %s is shown as “%s” and written as “%s”', (value, dimension, shown, written) => {
  expect([showQuantity(value, dimension), writeQuantity(value, dimension)]).toEqual([shown, written]);
});

it('both ends of a range are shown in the unit of the larger one', () => {
  expect(showRange(0.35, 0.88, 'relative-humidity')).toBe('35 … 88 %RH');
  expect(showRange(500, 2000, 'pressure')).toBe('0.5 … 2 kPa');
  expect(showRange(99_000, 99_000, 'pressure')).toBe('99 kPa');
  expect(writeRange(-40, 120, 'temperature')).toBe('-40 .. 120 degC');
});

describe.each(Object.keys(DIMENSIONS) as Dimension[])('whatever is written for %s can be read again', (dimension) => {
  const size = fc.double({ min: 1e-6, max: Math.min(1e6, DIMENSIONS[dimension].most ?? 1e6), noNaN: true });

  it('as a value, to half of the last digit shown', () => {
    fc.assert(
      fc.property(size, (value) => {
        const read = readQuantity(writeQuantity(value, dimension), dimension);
        const again = read.ok ? read.value.value.value : Number.NaN;
        // At least two significant digits are written; half of the second of them is 5 % of the least such number.
        expect(Math.abs(again - value)).toBeLessThanOrEqual(0.05 * value + 1e-12);
      }),
    );
  });

  it('as a range', () => {
    fc.assert(
      fc.property(size, size, (one, other) => {
        const [low, high] = [Math.min(one, other), Math.max(one, other)];
        expect(readRange(writeRange(low, high, dimension), dimension).ok).toBe(true);
      }),
    );
  });
});
