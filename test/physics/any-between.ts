import fc from 'fast-check';

/**
 * Numbers of a range, three of four drawn evenly over it. `fc.double` draws evenly over the double numbers, of which
 * most lie within 1e-9 of zero: over a range that touches 0 it tries tiny numbers and the ends, and hardly any other.
 */
export function anyBetween(low: number, high: number): fc.Arbitrary<number> {
  const even = fc.nat(PARTS).map((part) => low + (high - low) * (part / PARTS));
  return fc.oneof(
    { arbitrary: even, weight: 3 },
    { arbitrary: fc.double({ min: low, max: high, noNaN: true }), weight: 1 },
  );
}

const PARTS = 2 ** 31 - 1;
