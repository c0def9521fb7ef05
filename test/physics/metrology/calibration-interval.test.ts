import { describe, expect, it } from 'vitest';
import {
  binomialProbability,
  probabilityRange,
} from '../../../server/src/physics/mathematics/binomial-distribution.ts';
import { coverageFactorFor } from '../../../server/src/physics/mathematics/student-distribution.ts';
import { intervalForLimits, testedInterval } from '../../../server/src/physics/metrology/calibration-interval.ts';
import { type DriftFit, type DriftPowers, driftAt, fitDrift } from '../../../server/src/physics/metrology/drift-fit.ts';

/** NASA-HDBK-8739.19-5: days between the checks of table 7-2, and the change that each found. */
const TABLE_7_2 = [
  { elapsed: 70, value: 0.1 },
  { elapsed: 86, value: 0.11 },
  { elapsed: 104, value: 0.251 },
  { elapsed: 135, value: 0.299 },
  { elapsed: 167, value: 0.403 },
  { elapsed: 173, value: 0.615 },
];
const ORDER_2_THROUGH_ZERO: DriftPowers = [1, 2];
/** Where the handbook's instrument starts, and how well that is known. */
const [Y0, U0] = [10.03, 0.28];
const YEAR = 365;

describe('the variables-data method of NASA-HDBK-8739.19-5', () => {
  const fitted = (sign = 1): DriftFit => {
    const fit = fitDrift(
      TABLE_7_2.map(({ elapsed, value }) => ({ elapsed, value: sign * value })),
      ORDER_2_THROUGH_ZERO,
    );
    if (fit === undefined) throw new Error('no fit');
    return fit;
  };
  // The start shifts the limits, and its uncertainty stands beside the scatter: u² = u0² + s² + u²(drift).
  const started = (fit: DriftFit): DriftFit => ({ ...fit, scatter: Math.hypot(fit.scatter, U0) });

  it('tables 7-3 and 7-4: drift of order 2 through zero, each figure to its printed digits', () => {
    const fit = fitted();
    expect(fit.coefficients[0]).toBeCloseTo(0.00015741, 8);
    expect(fit.coefficients[1]).toBeCloseTo(0.00001674, 8);
    expect(fit.scatter).toBeCloseTo(0.0708, 4);
    expect(fit.variances[0]).toBeCloseTo(1.01e-6, 8);
    expect(fit.variances[1]).toBeCloseTo(4.549e-11, 14);
    expect(fit.covariance).toBeCloseTo(-6.607e-9, 12);
  });

  it('u0 0.28 grows to a target of 0.5 in 327.15 d, to its last digit', () => {
    const fit = started(fitted());
    expect(driftAt(fit, 327.145).readingUncertainty).toBeLessThan(0.5);
    expect(driftAt(fit, 327.155).readingUncertainty).toBeGreaterThan(0.5);
  });

  it('tables 7-5 and 7-6: limits 9 to 11 hold with 90 % for 140.1 d', () => {
    const limits = { low: 9 - Y0, high: 11 - Y0 };
    expect(intervalForLimits(started(fitted()), limits, coverageFactorFor(0.9, 4), YEAR)).toBeCloseTo(140.1, 1);
  });

  it('table 7-7: an upper limit of 11 alone holds with 90 % for 171.75 d', () => {
    // One tail of 10 %: both of 80 %.
    const k = coverageFactorFor(0.8, 4);
    expect(intervalForLimits(started(fitted()), { high: 11 - Y0 }, k, YEAR)).toBeCloseTo(171.75, 2);
    // The same drift downwards meets the lower limit as soon.
    expect(intervalForLimits(started(fitted(-1)), { low: Y0 - 11 }, k, YEAR)).toBeCloseTo(171.75, 2);
  });

  it('the drift itself meets the limit between the soonest and the latest time', () => {
    const [soonest, central, latest] = [2, 0, -2].map(
      (k) => intervalForLimits(started(fitted()), { high: 11 - Y0 }, k, YEAR) ?? 0,
    );
    expect(driftAt(fitted(), central ?? 0).value).toBeCloseTo(11 - Y0, 6);
    expect([soonest, central, latest].toSorted((a = 0, b = 0) => a - b)).toEqual([soonest, central, latest]);
  });

  it('by hand: a drift of 1 in a year passes 0.999 of it just before the year is over', () => {
    const certain: DriftFit = {
      ...fitted(),
      powers: [0, 1],
      coefficients: [0, 1],
      variances: [0, 0],
      covariance: 0,
      scatter: 0,
    };
    expect(intervalForLimits(certain, { high: 0.999 }, 0, 1)).toBeCloseTo(0.999, 9);
  });

  it('is nothing where a limit is passed at once, and none where it is kept', () => {
    expect(intervalForLimits(started(fitted()), { high: 0.1 }, 2, YEAR)).toBe(0);
    expect(intervalForLimits(started(fitted()), { high: 11 - Y0 }, 2, 100)).toBeUndefined();
  });
});

describe('the test-interval method A3 of NCSL RP-1', () => {
  it('tutorial data of 2019: 15 of 20 at 365 d, target 0.95: 231 d, rejected with 0.9949', () => {
    const tested = testedInterval({ interval: 365, inTolerance: 15, checks: 20 }, 0.95, 0.5);
    expect(tested.interval).toBeCloseTo(231, 0);
    expect(tested.rejectionConfidence).toBeCloseTo(0.9949, 4);
    expect(tested.observed.low).toBeCloseTo(0.6516, 4);
    expect(tested.observed.high).toBeCloseTo(0.8286, 4);
  });

  it('a record that differs from the target with less confidence than is asked for leaves the interval', () => {
    const tested = testedInterval({ interval: 365, inTolerance: 15, checks: 20 }, 0.95, 0.999);
    expect(tested.interval).toBe(365);
    expect(tested.rejectionConfidence).toBeCloseTo(0.9949, 4);
  });

  it('library-made, not published: 42 of 50 at 365 d, target 0.9, confidence 0.3: 329 d, 0.7557', () => {
    const tested = testedInterval({ interval: 365, inTolerance: 42, checks: 50 }, 0.9, 0.3);
    expect(tested.interval).toBeCloseTo(329, 0);
    expect(tested.rejectionConfidence).toBeCloseTo(0.7557, 4);
    expect(tested.observed.low).toBeCloseTo(0.8067, 4);
    expect(tested.observed.high).toBeCloseTo(0.8664, 4);
  });

  it.each([
    [1, 1, 365],
    [3, 3, 365],
    [10, 10, 365],
    [0, 1, 365 / 2],
  ])('%i of %i within tolerance at 365 d, target 0.95: %f d', (inTolerance, checks, interval) => {
    expect(testedInterval({ interval: 365, inTolerance, checks }, 0.95, 0.5).interval).toBe(interval);
  });

  it('lengthens an interval that is kept for long', () => {
    const { interval } = testedInterval({ interval: 365, inTolerance: 60, checks: 60 }, 0.95, 0.5);
    expect(interval).toBeGreaterThan(365);
    expect(interval).toBeLessThan(365 * 10 ** 0.05);
  });
});

describe('the binomial distribution', () => {
  it('by hand: at most 1 of 2 with probability 0.5 is 0.75, at most 2 of 4 with 0.5 is 11/16', () => {
    expect(binomialProbability(1, 2, 0.5)).toBeCloseTo(0.75, 12);
    expect(binomialProbability(2, 4, 0.5)).toBeCloseTo(11 / 16, 12);
  });

  it('does not underflow with many checks: half of 5000 at 0.5 is a little over a half', () => {
    // 1/2 + C(5000, 2500)/2^5001, and by Stirling that term is 1/(2·√(2500·π)).
    expect(binomialProbability(2500, 5000, 0.5)).toBeCloseTo(0.5 + 1 / (2 * Math.sqrt(2500 * Math.PI)), 6);
  });

  it('has its ends', () => {
    expect(binomialProbability(-1, 3, 0.5)).toBe(0);
    expect(binomialProbability(3, 3, 0.5)).toBe(1);
    expect(binomialProbability(0, 3, 0)).toBe(1);
    expect(binomialProbability(3, 3, 0)).toBe(1);
    expect(binomialProbability(2, 3, 1)).toBe(0);
    expect(binomialProbability(3, 3, 1)).toBe(1);
  });

  it('Clopper and Pearson 1934, by hand: none of 10 with 95 % is up to 1 − 0.025^(1/10)', () => {
    const { low, high } = probabilityRange(0, 10, 0.95);
    expect(low).toBeCloseTo(0, 12);
    expect(high).toBeCloseTo(1 - 0.025 ** 0.1, 9);
  });
});
