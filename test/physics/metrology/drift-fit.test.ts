import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverageFactorFor } from '../../../server/src/physics/mathematics/student-distribution.ts';
import { type DriftReading, driftAt, fitDrift } from '../../../server/src/physics/metrology/drift-fit.ts';
import { anyBetween } from '../any-between.ts';
import { normal, seededRandom } from '../monte-carlo.ts';

/** JCGM 100:2008 table H.6: corrections of a thermometer in °C, by its reading less 20 °C (data from memory). */
const TABLE_H6: readonly (readonly [number, number])[] = [
  [1.521, -0.171],
  [2.012, -0.169],
  [2.512, -0.166],
  [3.003, -0.159],
  [3.507, -0.164],
  [3.999, -0.165],
  [4.513, -0.156],
  [5.002, -0.157],
  [5.503, -0.159],
  [6.01, -0.161],
  [6.511, -0.16],
];

function readings(rows: readonly (readonly [number, number])[], standardUncertainty?: number): DriftReading[] {
  return rows.map(([elapsed, value]) => ({
    elapsed,
    value,
    ...(standardUncertainty === undefined ? {} : { standardUncertainty }),
  }));
}

function fitted(...given: Parameters<typeof fitDrift>) {
  const fit = fitDrift(...given);
  if (fit === undefined) throw new Error('no fit');
  return fit;
}

describe('a straight line', () => {
  const fitOfTable = () => fitted(readings(TABLE_H6));

  it('JCGM 100 H.3.3: a −0.1712, b 0.00218, s 0.0035, each to its printed digits', () => {
    const fit = fitOfTable();
    expect(fit.coefficients[0]).toBeCloseTo(-0.1712, 4);
    expect(fit.coefficients[1]).toBeCloseTo(0.00218, 5);
    expect(fit.scatter).toBeCloseTo(0.0035, 4);
    expect(fit.degreesOfFreedom).toBe(9);
  });

  it('JCGM 100 H.3.3: u(a) 0.0029, u(b) 0.00067, correlation −0.930', () => {
    const fit = fitOfTable();
    const [ofStart, ofRate] = fit.variances.map(Math.sqrt);
    expect(ofStart).toBeCloseTo(0.0029, 4);
    expect(ofRate).toBeCloseTo(0.00067, 5);
    expect(fit.covariance / ((ofStart ?? 0) * (ofRate ?? 0))).toBeCloseTo(-0.93, 3);
  });

  it('JCGM 100 H.3.4: the correction at 30 °C is −0.1494 °C with standard uncertainty 0.0041 °C', () => {
    const fit = fitOfTable();
    const at = driftAt(fit, 10);
    expect(at.value).toBeCloseTo(-0.1494, 4);
    expect(at.standardUncertainty).toBeCloseTo(0.0041, 4);
    expect(at.readingUncertainty).toBeCloseTo(Math.hypot(at.standardUncertainty, fit.scatter), 12);
  });

  it('readings that scatter more than their uncertainties say are as uncertain as they scatter', () => {
    const fit = fitOfTable();
    const tooSure = fitted(readings(TABLE_H6, 1e-4));
    expect(tooSure.variances[1] / fit.variances[1]).toBeCloseTo(1, 9);
    expect(tooSure.scatter).toBeCloseTo(fit.scatter, 12);
  });

  it('readings that scatter less are as uncertain as they say: u(b)² = u²/Σ(t − t̄)²', () => {
    const fit = fitted(
      readings(
        [
          [-1, 0.1],
          [0, 0.2],
          [1, 0.3],
        ],
        0.5,
      ),
    );
    expect(fit.coefficients[1]).toBeCloseTo(0.1, 12);
    expect(fit.variances[1]).toBeCloseTo(0.5 ** 2 / 2, 12);
    expect(fit.degreesOfFreedom).toBeUndefined();
  });

  it('a variance of 1 that is known and 3 of scatter with ν 2 have 4²/(3²/2) degrees of freedom: JCGM 100 eq. G.2b, by hand', () => {
    const off = Math.SQRT2;
    const fit = fitted(
      readings(
        [
          [-1, off],
          [-1, -off],
          [1, off],
          [1, -off],
        ],
        1,
      ),
    );
    expect(fit.degreesOfFreedom).toBeCloseTo(32 / 9, 12);
  });

  it('a reading weighs by its uncertainty: one of 10 u counts a hundredth', () => {
    const sure = { standardUncertainty: 0.1 };
    const fit = fitted([
      { elapsed: 0, value: 0, ...sure },
      { elapsed: 1, value: 1, ...sure },
      { elapsed: 1, value: 2, standardUncertainty: 1 },
    ]);
    // By hand: the value at 1 is the weighted mean (1 + 2/100)/(1 + 1/100).
    expect(driftAt(fit, 1).value).toBeCloseTo(1.02 / 1.01, 12);
  });

  it('weighs all the same where the uncertainty of one reading is not known', () => {
    const [first, ...others] = readings(TABLE_H6, 0.01);
    if (first === undefined) throw new Error('no reading');
    const { standardUncertainty: _, ...unknown } = first;
    expect(fitted([unknown, ...others])).toEqual(fitOfTable());
    expect(fitted([{ ...first, standardUncertainty: 0 }, ...others])).toEqual(fitOfTable());
  });

  it('times that differ by rounding alone are one time, whatever the unit of time and the weights', () => {
    for (const [time, standardUncertainty] of [
      [1000, 1],
      [1, 1e-4],
      [1e-3, 1e4],
    ] as const) {
      const given = [0, 1, 3, 4, 7].map((part) => ({
        elapsed: time * (1 + part * Number.EPSILON),
        value: part,
        standardUncertainty,
      }));
      expect(fitDrift(given)).toBeUndefined();
    }
  });

  it('takes three readings, and two times', () => {
    expect(
      fitDrift(
        readings([
          [0, 0],
          [1, 1],
        ]),
      ),
    ).toBeUndefined();
    expect(
      fitDrift(
        readings([
          [1, 0],
          [1, 1],
          [1, 2],
        ]),
      ),
    ).toBeUndefined();
  });

  it('gives finite numbers for any readings', () => {
    const reading = fc.record({
      elapsed: anyBetween(-30, 30),
      value: anyBetween(-50, 50),
      standardUncertainty: anyBetween(1e-4, 10),
    });
    fc.assert(
      fc.property(fc.array(reading, { minLength: 3, maxLength: 12 }), (given) => {
        const fit = fitDrift(given);
        if (fit === undefined) return;
        const numbers = [...fit.coefficients, ...fit.variances, ...Object.values(driftAt(fit, 40))];
        expect(numbers.every(Number.isFinite)).toBe(true);
      }),
    );
  });
});

describe('JCGM 101, by Monte Carlo: of 4000 drawn histories of five visits', () => {
  const HISTORIES = 4000;
  // Three times the standard deviation of such a share, √(0.95 · 0.05 / 4000).
  const WITHIN = 0.0104;
  const RATE = 0.5;
  const NOISE = 0.4;

  /** The shares in which the rate, and the reading after one more year, lie within 95 %. */
  function coverage(stated?: number): readonly [ofRate: number, ofReading: number] {
    const random = seededRandom(11);
    const noise = normal(0, NOISE);
    let [ofRate, ofReading] = [0, 0];
    for (let history = 0; history < HISTORIES; history++) {
      const rows = [-4, -3, -2, -1, 0].map((year) => [year, RATE * year + noise(random)] as const);
      const fit = fitted(readings(rows, stated));
      const k = coverageFactorFor(0.95, fit.degreesOfFreedom);
      const next = driftAt(fit, 1);
      if (Math.abs(fit.coefficients[1] - RATE) <= k * Math.sqrt(fit.variances[1])) ofRate++;
      if (Math.abs(RATE + noise(random) - next.value) <= k * next.readingUncertainty) ofReading++;
    }
    return [ofRate / HISTORIES, ofReading / HISTORIES];
  }

  it('without known uncertainties 95 % hold the true drift, and 95 % the next reading', () => {
    for (const share of coverage()) expect(Math.abs(share - 0.95)).toBeLessThan(WITHIN);
  });

  it('with known ones no fewer do, and few more: chance scatter beyond them only widens', () => {
    for (const share of coverage(NOISE)) {
      expect(share).toBeGreaterThan(0.95 - WITHIN);
      expect(share).toBeLessThan(0.99);
    }
  });

  it('with ones a quarter of the scatter over 91 % do, and 86 % if the scatter of five readings were taken as known', () => {
    // Short of 95 %, since three degrees of freedom sometimes scatter by chance as little as is stated.
    for (const share of coverage(NOISE / 4)) expect(share).toBeGreaterThan(0.91);
  });
});
