import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import {
  dewPointOfVapour,
  frostPointOfVapour,
  USUAL_VAPOUR_PRESSURES,
} from '../../../server/src/physics/air/dew-point.ts';
import { saturatedVapourPressure } from '../../../server/src/physics/air/saturated-vapour.ts';
import { saturationPressureOverIce, saturationPressureOverWater } from '../../../server/src/physics/air/saturation.ts';
import { anyBetween } from '../any-between.ts';
import { relativeDifference, steps } from '../numeric.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

const dewPointAt = (vapourPressure: number, pressure: number): number => {
  const point = dewPointOfVapour(vapourPressure, pressure);
  if (!point.ok) throw new Error(point.problem.kind);
  return point.value;
};

describe('inverse of the vapour pressure', () => {
  it('dew point to vapour pressure and back, −100 to 370 °C, 1 kPa to 30 MPa: within 1e-9 of the pressure', () => {
    fc.assert(
      fc.property(anyBetween(-100, 370), anyBetween(3, 7.5), (celsius, decade) => {
        const pressure = 10 ** decade;
        const vapourPressure = saturatedVapourPressure(celsius, pressure, 'water');
        const found = dewPointAt(vapourPressure, pressure);
        expect(relativeDifference(saturatedVapourPressure(found, pressure, 'water'), vapourPressure)).toBeLessThan(
          1e-9,
        );
        // 1e-9 of the pressure is at most 7e-8 K here, where it rises by 1.5 % per K or more.
        expect(Math.abs(found - celsius)).toBeLessThan(7e-8);
      }),
      { numRuns: 2000 },
    );
  });

  it('frost point to vapour pressure and back, −100 to 0.01 °C, 1 kPa to 30 MPa: within 1e-9 of the pressure', () => {
    fc.assert(
      fc.property(anyBetween(-100, 0.01), anyBetween(3, 7.5), (celsius, decade) => {
        const pressure = 10 ** decade;
        const vapourPressure = saturatedVapourPressure(celsius, pressure, 'ice');
        const found = frostPointOfVapour(vapourPressure, pressure);
        if (!found.ok) throw new Error(found.problem.kind);
        const again = saturatedVapourPressure(found.value, pressure, 'ice');
        expect(relativeDifference(again, vapourPressure)).toBeLessThan(1e-9);
        // 1e-9 of the pressure is at most 1.3e-8 K here, where it rises by 8 % per K or more.
        expect(Math.abs(found.value - celsius)).toBeLessThan(1.3e-8);
      }),
      { numRuns: 2000 },
    );
  });

  it('more vapour, higher dew point', () => {
    let last = Number.NEGATIVE_INFINITY;
    for (const logarithm of steps(-2, 11, 0.001)) {
      const point = dewPointAt(Math.exp(logarithm), 101_325);
      expect(point).toBeGreaterThan(last);
      last = point;
    }
  });
});

describe('published values', () => {
  it.each([
    [872.6, 5],
    [2339.2, 20],
    [7384.4, 40],
  ])(
    'ASHRAE Fundamentals 2017 ch. 1 table 3 read backwards, %d Pa: %d °C, less what the enhancement takes off',
    (pure, celsius) => {
      // f of 1.0039 to 1.0047 lowers the dew point by 0.055 to 0.09 K; without f the table comes back within 0.002 K.
      const factor = saturatedVapourPressure(celsius, 101_325, 'water') / saturationPressureOverWater(celsius);
      expect(Math.abs(dewPointAt(pure * factor, 101_325) - celsius)).toBeLessThan(0.002);
      const lowered = celsius - dewPointAt(pure, 101_325);
      expect(lowered).toBeGreaterThan(0.05);
      expect(lowered).toBeLessThan(0.09);
    },
  );

  it.each([
    [25, 0.5, 13.864],
    [40, 0.13979, 7.43],
  ])(
    'psychrolib (ideal gas), %d °C: the same dew point within 0.02 K, since f nearly cancels between two temperatures',
    (celsius, relativeHumidity, dewPoint) => {
      const vapourPressure = relativeHumidity * saturatedVapourPressure(celsius, 101_325, 'water');
      // f is up to 0.08 % lower at the dew point (0.012 K); saturation formula 0.003 K, rounding 0.005 K.
      expect(Math.abs(dewPointAt(vapourPressure, 101_325) - dewPoint)).toBeLessThan(0.02);
    },
  );

  it('psychrolib dew points of pure vapour, 2 to 99 °C: within 0.005 K once f is taken out', () => {
    for (const celsius of steps(2, 99, 1)) {
      const pure = saturationPressureOverWater(celsius);
      const ideal = psychrolib.GetTDewPointFromVapPres(celsius + 1, pure);
      const ours = dewPointAt(saturatedVapourPressure(celsius, 101_325, 'water'), 101_325);
      // 0.023 % between the saturation formulas is 0.004 K; psychrolib stops at 0.001 K.
      expect(Math.abs(ours - ideal), `${celsius} °C`).toBeLessThan(0.005);
    }
  });

  it('the dew point lies below the frost point by a tenth of it: −10.00 °C frost is about −11.2 °C dew', () => {
    // WMO-No. 8 annex 4.B: 6.112·exp(22.46·−10/262.62) = 6.112·exp(17.62 td/(243.12 + td)) at td = −11.23 °C.
    const vapourPressure = saturatedVapourPressure(-10, 101_325, 'ice');
    const frost = frostPointOfVapour(vapourPressure, 101_325);
    expect(frost.ok && Math.abs(frost.value + 10)).toBeLessThan(1e-7);
    expect(Math.abs(dewPointAt(vapourPressure, 101_325) + 11.23)).toBeLessThan(0.02);
  });
});

describe('near the phase boundary', () => {
  it('the dew point passes 0.01 °C, 0 °C and −1 °C without a step, also at 2 MPa', () => {
    for (const pressure of [101_325, 2e6]) {
      for (const celsius of [-1, 0, 0.01]) {
        const vapourPressure = saturatedVapourPressure(celsius, pressure, 'water');
        const below = dewPointAt(vapourPressure * (1 - 1e-8), pressure);
        const above = dewPointAt(vapourPressure * (1 + 1e-8), pressure);
        // 2e-8 of the pressure is 2.8e-7 K.
        expect(above - below).toBeGreaterThan(0);
        expect(above - below).toBeLessThan(4e-7);
      }
    }
  });

  it('dew point and frost point meet at the triple point', () => {
    const vapourPressure = saturatedVapourPressure(0.01, 101_325, 'ice');
    // The enhancement factors over water and over ice differ by 0.012 % there, which is 1.7 mK.
    expect(Math.abs(dewPointAt(vapourPressure, 101_325) - 0.01)).toBeLessThan(0.002);
  });
});

describe('no such point', () => {
  it('above the triple point there is no frost point', () => {
    expect(frostPointOfVapour(700, 101_325)).toMatchObject({
      ok: false,
      problem: { kind: 'no-frost-point-above-triple-point', vapourPressure: 700 },
    });
  });

  it('dry air has neither, nor has anything that is not a number', () => {
    for (const vapourPressure of [0, 1e-9, -1, Number.NaN]) {
      expect(dewPointOfVapour(vapourPressure, 101_325)).toMatchObject({ problem: { kind: 'too-dry-for-a-point' } });
      expect(frostPointOfVapour(vapourPressure, 101_325)).toMatchObject({ problem: { kind: 'too-dry-for-a-point' } });
    }
  });

  it('beyond the critical point there is no dew point', () => {
    expect(dewPointOfVapour(2.3e7, 1e8)).toMatchObject({ problem: { kind: 'too-wet-for-a-dew-point' } });
  });

  it('at any pressure, 10 Pa to 30 MPa, the limits lie outside the vapour pressures that are taken to have a dew point', () => {
    for (const decade of steps(1, 7.5, 0.1)) {
      const [least, most] = [-100, 373].map((celsius) => saturatedVapourPressure(celsius, 10 ** decade, 'water'));
      expect(least).toBeLessThan(USUAL_VAPOUR_PRESSURES.low);
      expect(most).toBeGreaterThan(USUAL_VAPOUR_PRESSURES.high);
    }
  });

  it('the least vapour that has a frost point is that over ice at −100 °C', () => {
    const least = saturatedVapourPressure(-100, 101_325, 'ice');
    const factor = least / saturationPressureOverIce(-100);
    expect(factor).toBeGreaterThan(1);
    const found = frostPointOfVapour(least, 101_325);
    expect(found.ok && Math.abs(found.value + 100)).toBeLessThan(1e-7);
  });
});
