import { expect, it } from 'vitest';
import { platinumTolerance } from '../../../server/src/physics/metrology/platinum-thermometer.ts';

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
