import { describe, expect, it } from 'vitest';
import {
  arcsine,
  curvilinearTrapezoid,
  normal,
  propagateDistributions,
  rectangular,
  seededRandom,
  student,
} from '../monte-carlo.ts';

const TRIALS = 200_000;

describe('JCGM 101 examples', () => {
  it('9.3 mass calibration: 1.234 mg, u 0.0754 mg, shortest 95 % interval [1.0834, 1.3825] mg (printed values from memory)', () => {
    // 2e5 trials: 0.0002 on the mean, 0.0002 on u (0.2 %), about 0.001 on each end of the interval; three times that.
    const nominal = 100_000;
    const model = ([reference = 0, added = 0, air = 0, weight = 0, standard = 0]: readonly number[]): number =>
      (reference + added) * (1 + (air - 1.2) * (1 / weight - 1 / standard)) - nominal;
    const { mean, standardUncertainty, shortestInterval } = propagateDistributions(
      model,
      [
        normal(100_000, 0.05),
        normal(1.234, 0.02),
        rectangular(1.1, 1.3),
        rectangular(7000, 9000),
        rectangular(7950, 8050),
      ],
      TRIALS,
      0.95,
      1,
    );
    expect(Math.abs(mean - 1.2341)).toBeLessThan(6e-4);
    expect(Math.abs(standardUncertainty - 0.0754)).toBeLessThan(6e-4);
    expect(Math.abs(shortestInterval[0] - 1.0834)).toBeLessThan(4e-3);
    expect(Math.abs(shortestInterval[1] - 1.3825)).toBeLessThan(4e-3);
  });

  it('9.5 gauge block: 838 nm, u 36 nm, 99 % interval [745, 932] nm', () => {
    // 2e5 trials: 0.08 nm on the mean, 0.06 nm on u, about 0.4 nm on each end. Printed to 1 nm.
    const model = ([
      standard = 0,
      comparison = 0,
      random = 0,
      systematic = 0,
      expansion = 0,
      meanDeviation = 0,
      cycle = 0,
      expansionDifference = 0,
      temperatureDifference = 0,
    ]: readonly number[]): number =>
      standard +
      comparison +
      random +
      systematic -
      standard * (expansionDifference * (meanDeviation + cycle) + expansion * temperatureDifference) -
      50_000_000;
    const { mean, standardUncertainty, symmetricInterval } = propagateDistributions(
      model,
      [
        student(50_000_623, 25, 18),
        student(215, 6, 24),
        student(0, 4, 5),
        student(0, 7, 8),
        rectangular(9.5e-6, 13.5e-6),
        normal(-0.1, 0.2),
        arcsine(-0.5, 0.5),
        curvilinearTrapezoid(-1e-6, 1e-6, 0.1e-6),
        curvilinearTrapezoid(-0.05, 0.05, 0.025),
      ],
      TRIALS,
      0.99,
      2,
    );
    expect(Math.abs(mean - 838)).toBeLessThan(0.5);
    expect(Math.abs(standardUncertainty - 36)).toBeLessThan(0.5);
    expect(Math.abs(symmetricInterval[0] - 745)).toBeLessThan(1.5);
    expect(Math.abs(symmetricInterval[1] - 932)).toBeLessThan(1.5);
  });
});

it("Park and Miller's check of the minimal standard with multiplier 48271: seed 1, ten thousand steps give 399268537", () => {
  const random = seededRandom(0);
  let last = 0;
  for (let n = 0; n < 10_000; n++) last = random();
  expect(Math.round(last * (2 ** 31 - 1))).toBe(399_268_537);
});
