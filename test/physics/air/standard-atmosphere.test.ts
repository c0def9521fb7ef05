import psychrolib from 'psychrolib';
import { expect, it } from 'vitest';
import { pressureAtAltitude } from '../../../server/src/physics/air/standard-atmosphere.ts';
import { steps } from '../numeric.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

it.each([
  [-500, 107_478],
  [0, 101_325],
  [500, 95_461],
  [1000, 89_875],
  [4000, 61_640],
])('ASHRAE Fundamentals 2017 ch. 1 table 1, %d m: %d Pa within 1 Pa', (metres, published) => {
  expect(Math.abs(pressureAtAltitude(metres) - published)).toBeLessThan(1);
});

it('psychrolib, −500 to 11000 m: within 3 Pa, from the rounded exponent 5.2559', () => {
  for (const metres of steps(-500, 11_000, 250)) {
    expect(Math.abs(pressureAtAltitude(metres) - psychrolib.GetStandardAtmPressure(metres))).toBeLessThan(3);
  }
});

it('ISO 2533, 11000 m: 22632 Pa (from memory) within 1 Pa', () => {
  expect(Math.abs(pressureAtAltitude(11_000) - 22_632)).toBeLessThan(1);
});

it('is finite far outside its range', () => {
  expect(pressureAtAltitude(100_000)).toBe(0);
  expect(Number.isFinite(pressureAtAltitude(-1e6))).toBe(true);
});
