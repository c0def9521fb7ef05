import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverageFactorFor } from '../../../server/src/physics/mathematics/student-distribution.ts';
import { type Contribution, combineContributions } from '../../../server/src/physics/metrology/budget.ts';
import { checkLinearity } from '../../../server/src/physics/metrology/second-order.ts';
import { standardUncertaintyOf } from '../../../server/src/physics/metrology/standard-uncertainty.ts';
import { anyBetween } from '../any-between.ts';

describe('JCGM 100 H.1, end gauge', () => {
  // In nm and K; sensitivities of l = ls + d − ls·(δα·θ + αs·δθ).
  const length = 50_000_623;
  const contributions: readonly Contribution[] = [
    { name: 'standard', standardUncertainty: 25, sensitivity: 1 },
    { name: 'comparison, repeated', standardUncertainty: 5.8, sensitivity: 1 },
    { name: 'comparator, random', standardUncertainty: 3.9, sensitivity: 1 },
    { name: 'comparator, systematic', standardUncertainty: 6.7, sensitivity: 1 },
    {
      name: 'difference of expansion',
      standardUncertainty: 0.58e-6,
      sensitivity: -length * -0.1,
    },
    {
      name: 'difference of temperature',
      standardUncertainty: 0.029,
      sensitivity: -length * 11.5e-6,
    },
  ];

  it('gives 32 nm as printed, 31.71 nm unrounded', () => {
    expect(combineContributions(contributions).standardUncertainty).toBeCloseTo(31.71, 1);
  });

  it('has 9.7 nm from the comparison, as printed', () => {
    const comparison = combineContributions(contributions.slice(1, 4));
    expect(comparison.standardUncertainty).toBeCloseTo(9.7, 1);
  });

  it('has 93 nm at 99 %, with the coverage factor of 2.92 of its 16 degrees of freedom', () => {
    const factor = coverageFactorFor(0.99, 16);
    expect(factor).toBeCloseTo(2.92, 2);
    expect(Math.round(32 * factor)).toBe(93);
  });

  it('lists the standard first, the temperature difference next, with shares that add up', () => {
    const { shares } = combineContributions(contributions);
    expect(shares.slice(0, 2).map((share) => share.contribution.name)).toEqual([
      'standard',
      'difference of temperature',
    ]);
    // By hand from printed figures: 25² of 31.71², whose last digit is 0.0004 of the share.
    expect(shares[0]?.share).toBeCloseTo(25 ** 2 / 31.71 ** 2, 3);
    expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  });

  it('with second-order terms gives 34 nm as printed, and so is not linear enough', () => {
    const model = ([ls = 0, d = 0, da = 0, theta = 0, as = 0, dt = 0]: readonly number[]): number =>
      ls + d - ls * (da * theta + as * dt);
    const check = checkLinearity(model, [
      { estimate: length, standardUncertainty: 25 },
      { estimate: 215, standardUncertainty: 9.7 },
      { estimate: 0, standardUncertainty: 0.58e-6 },
      { estimate: -0.1, standardUncertainty: 0.41 },
      { estimate: 11.5e-6, standardUncertainty: 1.2e-6 },
      { estimate: 0, standardUncertainty: 0.029 },
    ]);
    expect(check?.firstOrderUncertainty).toBeCloseTo(31.71, 1);
    expect(check?.secondOrderUncertainty).toBeCloseTo(33.91, 1);
    expect(check?.isLinearEnough).toBe(false);
  });
});

it('JCGM 100 table H.5 (from memory): R, X and Z of H.2 with correlations ignored 0.195, 0.201, 0.204 ohm', () => {
  const volts = [5.007, 4.994, 5.005, 4.99, 4.999];
  const amperes = [19.663e-3, 19.639e-3, 19.64e-3, 19.685e-3, 19.678e-3];
  const radians = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
  const [v, i, p] = [mean(volts), mean(amperes), mean(radians)];
  const ofInputs = [volts, amperes, radians].map(uncertaintyOfMean);
  const resistance = [Math.cos(p) / v, -Math.cos(p) / i, -Math.sin(p)].map((c) => (c * v) / i);
  const reactance = [Math.sin(p) / v, -Math.sin(p) / i, Math.cos(p)].map((c) => (c * v) / i);
  const impedance = [1 / i, -v / i ** 2, 0];
  const combined = [resistance, reactance, impedance].map((sensitivities) => {
    const inputs = ofInputs.map((standardUncertainty, n) => ({
      name: `input ${n}`,
      standardUncertainty,
      sensitivity: sensitivities[n] ?? 0,
    }));
    return Number(combineContributions(inputs).standardUncertainty.toFixed(3));
  });
  expect(combined).toEqual([0.195, 0.201, 0.204]);
});

describe('other published budgets', () => {
  it('EA-4/02 S2, calibration of a 10 kg weight: 29.3 mg and 59 mg (from memory; a page shows 0.0291 g)', () => {
    const parts = {
      standard: standardUncertaintyOf(45, { coverageFactor: 2 }),
      drift: standardUncertaintyOf(15, 'rectangular'),
      comparison: 25 / Math.sqrt(3),
      eccentricity: standardUncertaintyOf(10, 'rectangular'),
      buoyancy: standardUncertaintyOf(10, 'rectangular'),
    };
    const contributions = Object.entries(parts).map(([name, standardUncertainty]) => ({
      name,
      standardUncertainty,
      sensitivity: 1,
    }));
    const { standardUncertainty } = combineContributions(contributions);
    // 29.24 mg unrounded; the printed 29.3 mg carries rounded contributions.
    expect(Math.abs(standardUncertainty - 29.3)).toBeLessThan(0.1);
    expect(Math.abs(2 * standardUncertainty - 59)).toBeLessThan(0.6);
  });

  it('NIST TN 1900 E13, thermal expansion coefficient: 1.7266e-5 /K with u 1.76e-6 to first order', () => {
    const [l0, l1, t0, t1] = [1.4999, 1.5021, 288.15, 373.1];
    const model = ([a = 0, b = 0, c = 0, d = 0]: readonly number[]): number => (b - a) / (a * (d - c));
    expect(model([l0, l1, t0, t1])).toBeCloseTo(1.7266e-5, 9);
    const { standardUncertainty } = combineContributions([
      { name: 'L0', standardUncertainty: 0.0001, sensitivity: -l1 / (l0 ** 2 * (t1 - t0)) },
      { name: 'L1', standardUncertainty: 0.0002, sensitivity: 1 / (l0 * (t1 - t0)) },
      { name: 'T0', standardUncertainty: 0.02, sensitivity: model([l0, l1, t0, t1]) / (t1 - t0) },
      { name: 'T1', standardUncertainty: 0.05, sensitivity: -model([l0, l1, t0, t1]) / (t1 - t0) },
    ]);
    expect(standardUncertainty).toBeCloseTo(1.76e-6, 8);
    const check = checkLinearity(model, [
      { estimate: l0, standardUncertainty: 0.0001 },
      { estimate: l1, standardUncertainty: 0.0002 },
      { estimate: t0, standardUncertainty: 0.02 },
      { estimate: t1, standardUncertainty: 0.05 },
    ]);
    expect(check?.firstOrderUncertainty).toBeCloseTo(standardUncertainty, 10);
    expect(check?.isLinearEnough).toBe(true);
  });
});

describe('JCGM 101 9.4, comparison loss x1² + x2², u 0.005 each', () => {
  it.each([
    [0, 50e-6, 50e-6, 0],
    [0.01, 50e-6, 111.8e-6, 100e-6],
    [0.05, 50e-6, 502.5e-6, 500e-6],
  ])('x1 %f: mean shifted by 2·u², u² = 4·x1²·u² + 4·u⁴ (exact)', (x1, shift, secondOrder, firstOrder) => {
    const check = checkLinearity(
      ([a = 0, b = 0]) => a ** 2 + b ** 2,
      [
        { estimate: x1, standardUncertainty: 0.005 },
        { estimate: 0, standardUncertainty: 0.005 },
      ],
    );
    expect(check?.meanShift).toBeCloseTo(shift, 10);
    expect(Math.abs((check?.secondOrderUncertainty ?? 0) - secondOrder)).toBeLessThan(0.05e-6);
    expect(check?.firstOrderUncertainty).toBeCloseTo(firstOrder, 10);
    expect(check?.isLinearEnough).toBe(false);
  });

  it('exponential of a normal quantity: mean shift u²/2 and the exact variance of the log-normal, to third order in u', () => {
    // e^(u²)·(e^(u²) − 1) = u² + 3·u⁴/2 + …; the note to 5.1.2 has u² + u⁴·(1/2 + 1). The rest is of order u⁶.
    const check = checkLinearity(([x = 0]) => Math.exp(x), [{ estimate: 0, standardUncertainty: 0.1 }]);
    expect(check?.meanShift).toBeCloseTo(0.005, 5);
    const exact = Math.exp(0.01) * Math.expm1(0.01);
    expect(Math.abs((check?.secondOrderUncertainty ?? 0) ** 2 - exact)).toBeLessThan(3e-6);
  });

  it('says nothing where the model has no value near the estimates', () => {
    const model = ([x = 0]: readonly number[]): number | undefined => (x > 1 ? undefined : x);
    expect(checkLinearity(model, [{ estimate: 1, standardUncertainty: 0.1 }])).toBeUndefined();
    expect(checkLinearity(([x = 0]) => 1 / x, [{ estimate: 0, standardUncertainty: 0.1 }])).toBeUndefined();
  });
});

it('x·y² of two normal quantities: mean shift and variance by their moments, but for a term of sixth order', () => {
  // E[x] = a, E[x²] = a² + u², E[y²] = b² + v², E[y⁴] = b⁴ + 6·b²·v² + 3·v⁴.
  const [a, u, b, v] = [1, 0.1, 2, 0.2];
  const check = checkLinearity(
    ([x = 0, y = 0]) => x * y ** 2,
    [
      { estimate: a, standardUncertainty: u },
      { estimate: b, standardUncertainty: v },
    ],
  );
  const mean = a * (b ** 2 + v ** 2);
  const variance = (a ** 2 + u ** 2) * (b ** 4 + 6 * b ** 2 * v ** 2 + 3 * v ** 4) - mean ** 2;
  expect(check?.meanShift).toBeCloseTo(mean - a * b ** 2, 10);
  // The differences are exact for a cubic but for rounding, 1e-16 over the step of 0.1 cubed.
  expect((check?.secondOrderUncertainty ?? 0) ** 2).toBeCloseTo(variance - 3 * u ** 2 * v ** 4, 10);
});

it('JCGM 101 9.3, mass calibration (printed values from memory): 0.0539 mg to first, 0.0750 mg to second order', () => {
  const model = ([reference = 0, added = 0, air = 0, weight = 0, standard = 0]: readonly number[]): number =>
    (reference + added) * (1 + (air - 1.2) * (1 / weight - 1 / standard)) - 100_000;
  const check = checkLinearity(model, [
    { estimate: 100_000, standardUncertainty: 0.05 },
    { estimate: 1.234, standardUncertainty: 0.02 },
    { estimate: 1.2, standardUncertainty: standardUncertaintyOf(0.1, 'rectangular') },
    { estimate: 8000, standardUncertainty: standardUncertaintyOf(1000, 'rectangular') },
    { estimate: 8000, standardUncertainty: standardUncertaintyOf(50, 'rectangular') },
  ]);
  expect(check?.firstOrderUncertainty).toBeCloseTo(0.0539, 4);
  expect(check?.secondOrderUncertainty).toBeCloseTo(0.075, 4);
  expect(check?.isLinearEnough).toBe(false);
});

describe('budget in general', () => {
  it('is finite and no smaller than its largest contribution, for any contributions', () => {
    const uncertain = anyBetween(0, 1e6);
    const sensitivity = anyBetween(-1e6, 1e6);
    fc.assert(
      fc.property(fc.array(fc.tuple(uncertain, sensitivity), { maxLength: 8 }), (rows) => {
        const contributions = rows.map(([standardUncertainty, c], n) => ({
          name: `input ${n}`,
          standardUncertainty,
          sensitivity: c,
        }));
        const combined = combineContributions(contributions);
        const largest = Math.max(0, ...combined.shares.map((share) => share.resultUncertainty));
        // The square of anything below 1e-150 underflows.
        expect(combined.standardUncertainty).toBeGreaterThanOrEqual(largest * (1 - 1e-9) - 1e-150);
        for (const { share } of combined.shares) expect(Number.isFinite(share)).toBe(true);
      }),
    );
  });

  it('JCGM 100, 4.3.3 and 4.3.7: limits of ±0.05 are 0.029, an expanded uncertainty of 0.05 with k = 2 is 0.025', () => {
    expect(standardUncertaintyOf(0.05, 'rectangular')).toBeCloseTo(0.029, 3);
    expect(standardUncertaintyOf(0.05, { coverageFactor: 2 })).toBe(0.025);
  });
});

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function uncertaintyOfMean(values: readonly number[]): number {
  const squares = values.reduce((sum, value) => sum + (value - mean(values)) ** 2, 0);
  return Math.sqrt(squares / (values.length - 1) / values.length);
}
