import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  alarmErrorProbability,
  guardBandedLimit,
  leastHysteresis,
} from '../../../server/src/physics/metrology/alarm.ts';
import { conformanceProbability, enNumber } from '../../../server/src/physics/metrology/decision.ts';
import { anyBetween } from '../any-between.ts';

describe('conformance', () => {
  it('JCGM 106 Zener diode (from memory): −5.47 V, u 0.05 V, at most −5.40 V: 0.919', () => {
    expect(conformanceProbability(-5.47, 0.05, { high: -5.4 })).toBeCloseTo(0.919, 3);
    // The same of the other sign, with the limit below.
    expect(conformanceProbability(5.47, 0.05, { low: 5.4 })).toBeCloseTo(0.919, 3);
  });

  it('JCGM 106 motor oil (from memory): 13.6, u 1.8, limits 12.5 to 16.3: 0.66', () => {
    expect(conformanceProbability(13.6, 1.8, { low: 12.5, high: 16.3 })).toBeCloseTo(0.6626, 4);
  });

  it('open tool suncal: N(10, 0.4) within 9 to 11 leaves 0.01242 outside', () => {
    expect(1 - conformanceProbability(10, 0.4, { low: 9, high: 11 })).toBeCloseTo(0.01242, 5);
  });

  it('without uncertainty is sure, and a result at a limit conforms', () => {
    expect(conformanceProbability(9, 0, { low: 9, high: 11 })).toBe(1);
    expect(conformanceProbability(11, 0, { low: 9, high: 11 })).toBe(1);
    expect(conformanceProbability(11.01, 0, { low: 9, high: 11 })).toBe(0);
    expect(conformanceProbability(8.99, 0, { low: 9, high: 11 })).toBe(0);
    expect(conformanceProbability(5, 0, {})).toBe(1);
  });
});

describe('En number', () => {
  it('ISO 13528, by hand: 74.6 ± 0.8 against 75.3 ± 0.6 is −0.70, 76.3 ± 1.2 against 75.0 ± 0.5 is 1', () => {
    expect(enNumber(74.6, 0.8, 75.3, 0.6)).toBeCloseTo(-0.7, 10);
    expect(enNumber(76.3, 1.2, 75, 0.5)).toBeCloseTo(1, 10);
  });

  it('has none without any uncertainty', () => {
    expect(enNumber(1, 0, 2, 0)).toBeUndefined();
  });
});

describe('alarm', () => {
  it('normal table: at a tolerance of two standard uncertainties 2.28 % of alarms are missed, and as many false', () => {
    expect(alarmErrorProbability(2, 1)).toBeCloseTo(0.02275, 5);
    expect(alarmErrorProbability(1, 0.5)).toBeCloseTo(0.02275, 5);
  });

  it('the guard-banded limit misses just 5 %, in either direction, and never moves outwards', () => {
    expect(guardBandedLimit(95, 'above', 5, 1)).toBe(95);
    const above = guardBandedLimit(95, 'above', 1, 2);
    // Normal table: 1.645 standard uncertainties of 2, less the tolerance of 1.
    expect(above).toBeCloseTo(95 - 2.29, 3);
    expect(alarmErrorProbability(1 + (95 - above), 2)).toBeCloseTo(0.05, 9);
    expect(guardBandedLimit(95, 'below', 1, 2) - 95).toBeCloseTo(95 - above, 12);
  });

  it('without uncertainty errs never', () => {
    expect(alarmErrorProbability(1, 0)).toBe(0);
  });

  it('ISO 5725-6: the hysteresis is the repeatability limit, 2.8 standard deviations', () => {
    expect(leastHysteresis(0.5)).toBeCloseTo(1.4, 12);
    // 1.96·√2 = 2.77, which the standard rounds up.
    expect(Math.abs(leastHysteresis(1) - 1.96 * Math.SQRT2)).toBeLessThan(0.05);
  });

  it('gives probabilities, for any tolerance and uncertainty', () => {
    fc.assert(
      fc.property(anyBetween(1e-6, 1e3), anyBetween(0, 1e3), (tolerance, uncertainty) => {
        const probability = alarmErrorProbability(tolerance, uncertainty);
        expect(probability).toBeGreaterThanOrEqual(0);
        expect(probability).toBeLessThanOrEqual(0.5);
      }),
    );
  });
});
