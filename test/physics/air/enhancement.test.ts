import { describe, expect, it } from 'vitest';
import {
  ENHANCEMENT_OVER_ICE,
  ENHANCEMENT_OVER_WATER,
  enhancement,
  enhancementFactor,
  enhancementLeavesFormula,
} from '../../../server/src/physics/air/enhancement.ts';
import { saturatedVapour, saturatedVapourPressure } from '../../../server/src/physics/air/saturated-vapour.ts';
import { saturationPressureOverWater } from '../../../server/src/physics/air/saturation.ts';
import { centralDifference, relativeDifference, steps } from '../numeric.ts';

describe('published values', () => {
  it.each([
    [0, 1e5, 1.0039, 1.5e-4],
    [90, 1e5, 1.0039, 1.5e-4],
    [90, 5e5, 1.018, 3.5e-4],
    [100, 5e5, 1.0188, 3.5e-4],
  ])('Hyland and Wexler 1983 table 2, %d °C, %d Pa: %d', (celsius, pressure, published, tolerance) => {
    // Half the last printed digit, and 0.01 % at 0.1 MPa or 0.03 % at 0.5 MPa, by which the formulations differ.
    expect(Math.abs(enhancementFactor(celsius, pressure, 'water') - published)).toBeLessThan(tolerance);
    expect(enhancementLeavesFormula(celsius, pressure, 'water')).toBeUndefined();
  });

  it.each([
    [-100, 1e5, 1.0105, 0.003],
    [-100, 5e5, 1.054, 0.016],
  ])(
    'Hyland and Wexler 1983 table 2 over ice, %d °C, %d Pa: %d within 30 % of f − 1',
    (celsius, pressure, published, tolerance) => {
      // The families of f disagree below −40 °C: at −80 °C and 1 atm Hardy gives 1.0074, the RP-1485 route 1.0093.
      expect(Math.abs(enhancementFactor(celsius, pressure, 'ice') - published)).toBeLessThan(tolerance);
      expect(enhancementLeavesFormula(celsius, pressure, 'ice')).toBeUndefined();
    },
  );

  it('CIPM-2007, 20 °C and 101325 Pa: 1.004026 within 0.01 %, the distance of two fits to the same data', () => {
    expect(Math.abs(enhancementFactor(20, 101_325, 'water') - 1.004026)).toBeLessThan(1e-4);
  });

  it.each([
    [150, 5e5, 1.0022, 0.0005],
    [150, 1e6, 1.0288, 0.0013],
    [160, 1e6, 1.0235, 0.0014],
    [170, 1e6, 1.0142, 0.0013],
  ])(
    'the continuation above 100 °C: Hyland and Wexler 1983 table 2, %d °C, %d Pa: %d',
    (celsius, pressure, published, tolerance) => {
      expect(Math.abs(enhancement(celsius, pressure, 'water').factor - published)).toBeLessThan(tolerance);
      expect(enhancementLeavesFormula(celsius, pressure, 'water')?.argument).toBe('celsius');
    },
  );
});

describe('the coefficients', () => {
  /** Hardy 1998 prints each cubic in kelvin too: [kelvin set, celsius set], as read in public code. */
  const sets = [
    ['water, α', [-1.6302041e-1, 1.807157e-3, -6.7703064e-6, 8.5813609e-9], [3.53624e-4, 2.9328363e-5, 2.6168979e-7]],
    ['water, ln β', [-5.9890467e1, 3.4378043e-1, -7.7326396e-4, 6.3405286e-7], [-10.7588, 6.3268134e-2, -2.5368934e-4]],
    [
      'supercooled, α',
      [-5.5898101e-2, 6.7140389e-4, -2.7492721e-6, 3.8268958e-9],
      [3.62183e-4, 2.6061244e-5, 3.866777e-7],
    ],
    [
      'supercooled, ln β',
      [-8.1985393e1, 5.8230823e-1, -1.6340527e-3, 1.6725084e-6],
      [-10.7604, 6.3987441e-2, -2.6351566e-4],
    ],
    ['ice, α', [-6.019057e-2, 7.398406e-4, -3.0897838e-6, 4.3669918e-9], [3.64449e-4, 2.9367585e-5, 4.8874766e-7]],
    ['ice, ln β', [-9.4868712e1, 7.2392075e-1, -2.1963437e-3, 2.4668279e-6], [-10.7271, 7.6215115e-2, -1.7490158e-4]],
  ] as const;
  const expectedFactor = (
    kelvinSets: readonly [Four, Four],
    celsius: number,
    pressure: number,
    saturation: number,
  ): number => {
    const kelvin = celsius + 273.15;
    const at = ([a, b, c, d]: Four): number => a + b * kelvin + c * kelvin ** 2 + d * kelvin ** 3;
    const [alpha, logBeta] = kelvinSets;
    return Math.exp(at(alpha) * (1 - saturation / pressure) + Math.exp(at(logBeta)) * (pressure / saturation - 1));
  };
  type Four = readonly [number, number, number, number];

  it.each(sets)(
    '%s: the kelvin and the celsius set of Hardy 1998 are one cubic',
    (_, [k0, k1, k2, k3], [c0, c1, c2]) => {
      const zero = 273.15;
      // The constant loses digits by cancellation: about 3e-9 absolute for α, 1e-7 relative for ln β.
      expect(Math.abs(k0 + k1 * zero + k2 * zero ** 2 + k3 * zero ** 3 - c0)).toBeLessThan(Math.abs(c0) * 2e-5);
      expect(relativeDifference(k1 + 2 * k2 * zero + 3 * k3 * zero ** 2, c1)).toBeLessThan(2e-5);
      expect(relativeDifference(k2 + 3 * k3 * zero, c2)).toBeLessThan(2e-5);
    },
  );

  it('f equals what the kelvin sets give, within 1e-6', () => {
    const [water, logWater, supercooled, logSupercooled, ice, logIce] = sets.map(([, kelvinSet]) => kelvinSet);
    if (!water || !logWater || !supercooled || !logSupercooled || !ice || !logIce) throw new Error('a set is missing');
    for (const pressure of [2e4, 101_325, 1e6]) {
      for (const celsius of [0, 20, 55]) {
        const saturation = saturationPressureOverWater(celsius);
        const expected = expectedFactor([water, logWater], celsius, pressure, saturation);
        expect(Math.abs(enhancement(celsius, pressure, 'water').factor - expected)).toBeLessThan(1e-6);
      }
      for (const celsius of [-50, -20, -1]) {
        const saturation =
          saturatedVapourPressure(celsius, pressure, 'ice') / enhancement(celsius, pressure, 'ice').factor;
        const expected = expectedFactor([ice, logIce], celsius, pressure, saturation);
        expect(Math.abs(enhancement(celsius, pressure, 'ice').factor - expected)).toBeLessThan(1e-6);
      }
      const cold = expectedFactor([supercooled, logSupercooled], -20, pressure, saturationPressureOverWater(-20));
      expect(Math.abs(enhancement(-20, pressure, 'water').factor - cold)).toBeLessThan(1e-6);
    }
  });
});

describe('the range', () => {
  it.each([
    [120, 1e6, 'celsius', 120],
    [-51, 101_325, 'celsius', -51],
    [20, 4_999, 'pressure', 4_999],
    [20, 2.1e6, 'pressure', 2.1e6],
  ])('over water, %d °C and %d Pa leave the formula, by %s', (celsius, pressure, argument, value) => {
    const outside = { kind: 'outside-formula', formula: ENHANCEMENT_OVER_WATER, argument, value };
    expect(enhancementLeavesFormula(celsius, pressure, 'water')).toEqual(outside);
  });

  it('over ice, 0.02 °C and −101 °C leave the formula', () => {
    for (const celsius of [0.02, -101]) {
      expect(enhancementLeavesFormula(celsius, 101_325, 'ice')).toMatchObject({
        formula: ENHANCEMENT_OVER_ICE,
        argument: 'celsius',
        value: celsius,
      });
    }
  });

  it('a pressure below saturation leaves the formula, and f is continued as 1', () => {
    expect(enhancementLeavesFormula(90, 60_000, 'water')?.argument).toBe('saturation-pressure-over-pressure');
    expect(enhancement(90, 60_000, 'water').factor).toBe(1);
  });

  it('f goes to 1 as the pressure falls to the saturation pressure', () => {
    const saturation = saturationPressureOverWater(80);
    // |f − 1| is about (α + β) times the relative distance, and α + β is about 0.01 here.
    for (const distance of [1e-2, 1e-4, 1e-6]) {
      expect(Math.abs(enhancement(80, saturation * (1 + distance), 'water').factor - 1)).toBeLessThan(0.02 * distance);
    }
  });

  it('f is legitimately below 1 at 5 kPa and −50 °C over water', () => {
    expect(enhancement(-50, 5_000, 'water').factor).toBeLessThan(1);
  });
});

describe('solvers can pass', () => {
  it.each([5e3, 5e4, 101_325, 3e5, 1e6, 2e6, 5e6])(
    'the vapour pressure of saturated air rises steadily at %d Pa',
    (pressure) => {
      for (const [phase, high] of [
        ['water', 373],
        ['ice', 0],
      ] as const) {
        let last = 0;
        for (const celsius of steps(-150, high, 0.1)) {
          const now = saturatedVapourPressure(celsius, pressure, phase);
          expect(now, `${celsius} °C over ${phase}`).toBeGreaterThan(last);
          last = now;
        }
      }
    },
  );

  it('there is no step of f at −100, −50, −1, 0, 0.01, 100 °C, at saturation, at 5 kPa or at 2 MPa', () => {
    const factorAt = (celsius: number, pressure: number): number => enhancement(celsius, pressure, 'water').factor;
    for (const celsius of [-100, -50, -1, 0, 0.01, 100]) {
      expect(Math.abs(factorAt(celsius - 1e-7, 1e6) - factorAt(celsius + 1e-7, 1e6))).toBeLessThan(1e-8);
    }
    const saturation = saturationPressureOverWater(60);
    for (const pressure of [5e3, 2e6, saturation]) {
      expect(Math.abs(factorAt(60, pressure * (1 - 1e-7)) - factorAt(60, pressure * (1 + 1e-7)))).toBeLessThan(1e-8);
    }
  });
});

it('the derivatives of f and of f·es are those of central differences', () => {
  for (const phase of ['water', 'ice'] as const) {
    for (const celsius of [-110, -80.3, -40.2, -0.5, -0.2, ...(phase === 'water' ? [15, 60, 99, 130] : [])]) {
      for (const pressure of [8e3, 101_325, 1e6, 3e6]) {
        const { perCelsius, perPressure } = saturatedVapour(celsius, pressure, phase);
        const byCelsius = centralDifference((at) => saturatedVapourPressure(at, pressure, phase), celsius, 1e-3);
        const value = saturatedVapourPressure(celsius, pressure, phase);
        const byPressure = centralDifference(
          (at) => saturatedVapourPressure(celsius, at, phase),
          pressure,
          pressure * 1e-4,
        );
        // ±1 mK and ±0.01 % of the pressure are good to about 1e-7 of value per K, and of value per relative pressure.
        expect(Math.abs(perCelsius - byCelsius)).toBeLessThan(1e-6 * value);
        expect(Math.abs(perPressure - byPressure)).toBeLessThan((1e-7 * value) / pressure);
      }
    }
  }
});
