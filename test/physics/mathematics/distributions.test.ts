import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalProbability, normalQuantile } from '../../../server/src/physics/mathematics/normal-distribution.ts';
import {
  coverageFactorFor,
  studentProbabilityWithin,
} from '../../../server/src/physics/mathematics/student-distribution.ts';
import { anyBetween } from '../any-between.ts';

describe('normal distribution', () => {
  it.each([
    [0, 0.5],
    [1, 0.841344746068543],
    [1.96, 0.97500210485178],
    [2, 0.977249868051821],
    [3, 0.99865010196837],
    [3.5, 0.999767370920964],
  ])('Abramowitz and Stegun table 26.1 (from memory): Φ(%f) = %f to 1e-13', (z, probability) => {
    expect(Math.abs(normalProbability(z) - probability)).toBeLessThan(1e-13);
    expect(Math.abs(normalProbability(-z) - (1 - probability))).toBeLessThan(1e-13);
  });

  it.each([
    [-5, 2.866515718791939e-7],
    [-10, 7.619853024160527e-24],
  ])('tail from memory: Φ(%f) = %f, relative 1e-12', (z, probability) => {
    expect(Math.abs(normalProbability(z) / probability - 1)).toBeLessThan(1e-12);
  });

  it('however far out, the whole of the distribution is 1 and its beginning 0', () => {
    for (const z of [30, 40, 1e200, Number.POSITIVE_INFINITY]) {
      expect(normalProbability(z)).toBe(1);
      expect(normalProbability(-z)).toBeLessThan(1e-190);
    }
  });

  it.each([
    [0.95, 1.644853626951473],
    [0.975, 1.959963984540054],
    [0.995, 2.575829303548901],
    [0.9999, 3.719016485455709],
  ])('Abramowitz and Stegun table 26.5 (from memory): quantile of %f is %f to 1e-9', (probability, z) => {
    expect(Math.abs(normalQuantile(probability) - z)).toBeLessThan(1e-9);
    expect(Math.abs(normalQuantile(1 - probability) + z)).toBeLessThan(1e-9);
  });

  it('both sides of the change of method agree: Φ is continuous at ±3', () => {
    const step = 1e-9;
    for (const edge of [-3, 3]) {
      const jump = normalProbability(edge + step) - normalProbability(edge - step);
      // 2e-9 times the density of 0.0044 is 9e-12.
      expect(Math.abs(jump)).toBeLessThan(1e-11);
    }
  });

  it('quantile and probability are inverse, and finite at the ends', () => {
    fc.assert(
      fc.property(anyBetween(0, 1), (probability) => {
        const z = normalQuantile(probability);
        expect(Number.isFinite(z)).toBe(true);
        // Probabilities nearer to the ends than 1e-15 are moved there.
        expect(Math.abs(normalProbability(z) - probability)).toBeLessThan(3e-15);
      }),
    );
  });
});

describe('Student t', () => {
  it.each([
    [1, 12.706, 63.657],
    [2, 4.303, 9.925],
    [3, 3.182, 5.841],
    [5, 2.571, 4.032],
    [10, 2.228, 3.169],
    [16, 2.12, 2.921],
    [30, 2.042, 2.75],
    [100, 1.984, 2.626],
  ])(
    'JCGM 100 table G.2 and Abramowitz and Stegun table 26.10 (from memory): %d degrees of freedom, %f at 95 %%, %f at 99 %%',
    (degreesOfFreedom, at95, at99) => {
      expect(Math.abs(coverageFactorFor(0.95, degreesOfFreedom) - at95)).toBeLessThan(6e-4);
      expect(Math.abs(coverageFactorFor(0.99, degreesOfFreedom) - at99)).toBeLessThan(6e-4);
    },
  );

  it('JCGM 100 G.4.1: degrees of freedom are cut to a whole number', () => {
    expect(coverageFactorFor(0.99, 16.85)).toBe(coverageFactorFor(0.99, 16));
  });

  it('without limit is normal, and many degrees of freedom come close to it', () => {
    expect(coverageFactorFor(0.95)).toBeCloseTo(1.959964, 6);
    expect(coverageFactorFor(0.99, 100_000)).toBeCloseTo(coverageFactorFor(0.99), 4);
  });

  it('one degree of freedom is the Cauchy distribution', () => {
    expect(studentProbabilityWithin(1, 1)).toBeCloseTo(0.5, 12);
  });

  it('factor and probability are inverse, for any confidence and degrees of freedom', () => {
    const confidence = anyBetween(0, 1);
    fc.assert(
      fc.property(confidence, fc.integer({ min: 1, max: 500 }), (p, degreesOfFreedom) => {
        const factor = coverageFactorFor(p, degreesOfFreedom);
        expect(Number.isFinite(factor)).toBe(true);
        const reached = studentProbabilityWithin(factor, degreesOfFreedom);
        expect(Math.abs(reached - Math.min(p, 0.999999))).toBeLessThan(1e-9);
      }),
    );
  });
});
