import { expect, it } from 'vitest';
import { risingRoot } from '../../../server/src/physics/mathematics/newton.ts';

it('a smooth root is found to the last digits', () => {
  const root = risingRoot((x) => ({ value: x ** 3 - 2, slope: 3 * x ** 2 }), 0, 10, 5, 1e-9);
  expect(Math.abs(root - Math.cbrt(2))).toBeLessThan(1e-15);
});

it('a step doubles the right digits: from 5 to the cube root of 2, to 1e-9, takes no more than ten', () => {
  let taken = 0;
  const tangentAt = (x: number) => {
    taken++;
    return { value: x ** 3 - 2, slope: 3 * x ** 2 };
  };
  risingRoot(tangentAt, 0, 10, 5, 1e-9);
  expect(taken).toBeLessThanOrEqual(10);
});

it('where Newton alone would diverge, bisection still arrives', () => {
  // Newton on the arc tangent diverges from any start beyond 1.39.
  const root = risingRoot((x) => ({ value: Math.atan(x - 3), slope: 1 / (1 + (x - 3) ** 2) }), -100, 100, 90, 1e-9);
  expect(Math.abs(root - 3)).toBeLessThan(1e-9);
});

it('a flat slope does not lead out of the bracket', () => {
  const root = risingRoot((x) => ({ value: x < 1 ? -1 : x - 1, slope: x < 1 ? 0 : 1 }), 0, 4, 0.5, 1e-9);
  expect(Math.abs(root - 1)).toBeLessThan(1e-8);
});

it('a function of one sign gives the end of the bracket nearest to zero', () => {
  expect(risingRoot((x) => ({ value: x + 5, slope: 1 }), 0, 4, 2, 1e-9)).toBeCloseTo(0, 8);
  expect(risingRoot((x) => ({ value: x - 5, slope: 1 }), 0, 4, 2, 1e-9)).toBeCloseTo(4, 8);
});

it('a root at the very end of the bracket is found as exactly as any other', () => {
  const tangentAt = (x: number) => ({ value: Math.exp(x) - Math.exp(2), slope: Math.exp(x) });
  expect(Math.abs(risingRoot(tangentAt, 2, 9, 4, 1e-6) - 2)).toBeLessThan(1e-14);
  expect(Math.abs(risingRoot(tangentAt, -9, 2, 0, 1e-6) - 2)).toBeLessThan(1e-14);
});
