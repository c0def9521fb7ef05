import { expect, it } from 'vitest';
import { exceeds } from '../../server/src/base/rounding.ts';

it.each([
  [(0.16 * 935.2) / 935.2, 0.16, false],
  [0.1 + 0.2, 0.3, false],
  [0.3 + 2e-9, 0.3, true],
  [1e6 + 0.0005, 1e6, false],
  [1e6 + 0.002, 1e6, true],
  [-40, -40, false],
  [-39.9, -40, true],
  [Number.POSITIVE_INFINITY, 1, true],
  [1, Number.POSITIVE_INFINITY, false],
])('%d exceeds %d: %s', (value, limit, expected) => {
  expect(exceeds(value, limit)).toBe(expected);
});
