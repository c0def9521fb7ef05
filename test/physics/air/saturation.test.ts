import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import {
  saturationPressureOverIce,
  saturationPressureOverWater,
  saturationSlopeOverIce,
  saturationSlopeOverWater,
} from '../../../server/src/physics/air/saturation.ts';
import { centralDifference, relativeDifference, steps } from '../numeric.ts';

psychrolib.SetUnitSystem(psychrolib.SI);
const celsiusOf = (kelvin: number): number => kelvin - 273.15;

describe('over water', () => {
  it('IAPWS SR1-86(1992) table 1: 611.657 Pa at 273.16 K, to the last printed digit', () => {
    expect(Math.abs(saturationPressureOverWater(0.01) - 611.657)).toBeLessThan(0.0005);
  });

  it('IAPWS SR1-86(1992) table 1: 22.064 MPa at 647.096 K, the critical point, and no more however much hotter', () => {
    expect(saturationPressureOverWater(celsiusOf(647.096))).toBeCloseTo(22.064e6, 3);
    for (const celsius of [374, 400, 1000]) {
      expect(saturationPressureOverWater(celsius)).toBe(22.064e6);
      expect(saturationSlopeOverWater(celsius)).toBe(0);
    }
  });

  it('IAPWS-95, 373.15 K: 101417.997 Pa; the auxiliary equation is known to lie 0.003 Pa lower', () => {
    expect(Math.abs(saturationPressureOverWater(100) - 101417.997)).toBeLessThan(0.005);
  });

  it('the boiling point at 101325 Pa is the accepted 99.974 °C of the ITS-90', () => {
    expect(saturationPressureOverWater(99.9738)).toBeLessThan(101_325);
    expect(saturationPressureOverWater(99.9748)).toBeGreaterThan(101_325);
  });

  it.each([
    [300, 3536.58941],
    [500, 2638897.76],
    [600, 12344314.6],
  ])('IAPWS R7-97 table 35, %d K: within 200 ppm, the distance of the two IAPWS equations', (kelvin, published) => {
    expect(relativeDifference(saturationPressureOverWater(celsiusOf(kelvin)), published)).toBeLessThan(2e-4);
  });

  it.each([
    [5, 872.6],
    [20, 2339.2],
    [25, 3169.7],
    [40, 7384.4],
  ])('ASHRAE Fundamentals 2017 ch. 1 table 3, %d °C: %d Pa to its last digit and 110 ppm', (celsius, published) => {
    // The table follows IAPWS-IF97, from which SR1-86 differs by up to 98 ppm between 0 and 100 °C.
    const tolerance = 0.05 + 110e-6 * published;
    expect(Math.abs(saturationPressureOverWater(celsius) - published)).toBeLessThan(tolerance);
  });

  it.each([
    [273.15, 611.213],
    [373.15, 1.01419e5],
    [473.15, 1.55507e6],
  ])('Hyland and Wexler 1983 table, %d K: within 230 ppm, the remainder of the IPTS-68', (kelvin, published) => {
    expect(relativeDifference(saturationPressureOverWater(celsiusOf(kelvin)), published)).toBeLessThan(2.3e-4);
  });

  it('Murphy and Koop 2005 table C1: 37.667 Pa at 240 K and 611.213 Pa at 273.15 K, to the printed digits', () => {
    expect(Math.abs(saturationPressureOverWater(celsiusOf(240)) - 37.667)).toBeLessThan(0.0005);
    // 15 ppm (0.009 Pa) is the largest shift that the join at the triple point makes.
    expect(Math.abs(saturationPressureOverWater(celsiusOf(273.15)) - 611.213)).toBeLessThan(0.0005);
  });

  it.each([
    [150, 1.562e-5, 5e-9],
    [180, 0.011239, 5e-7],
    [210, 1.2335, 5e-5],
  ])(
    'Murphy and Koop 2005 table C1 (from memory), %d K: %d Pa to the printed digits',
    (kelvin, published, tolerance) => {
      expect(Math.abs(saturationPressureOverWater(celsiusOf(kelvin)) - published)).toBeLessThan(tolerance);
    },
  );

  it('psychrolib (Hyland and Wexler 1983), 1 to 200 °C: within 0.023 %', () => {
    for (const celsius of steps(1, 200, 1)) {
      const expected = psychrolib.GetSatVapPres(celsius);
      expect(relativeDifference(saturationPressureOverWater(celsius), expected), `${celsius} °C`).toBeLessThan(2.3e-4);
    }
  });

  it('value and slope are continuous at the triple point', () => {
    const [below, above] = [0.01 - 1e-9, 0.01 + 1e-9];
    // Over 2e-9 K the pressure itself moves by 1.5e-10 relative, the slope by about the same.
    expect(relativeDifference(saturationPressureOverWater(below), saturationPressureOverWater(above))).toBeLessThan(
      1e-9,
    );
    expect(relativeDifference(saturationSlopeOverWater(below), saturationSlopeOverWater(above))).toBeLessThan(1e-9);
  });

  it('the join shifts Murphy and Koop 2005 eq. 10 by at most 15 ppm, and by under 1 ppm 12 K below it', () => {
    for (const celsius of steps(-30, 0, 0.25)) {
      const shift = relativeDifference(saturationPressureOverWater(celsius), murphyKoop(celsius + 273.15));
      expect(shift).toBeLessThan(celsius < -12 ? 1e-6 : 15.5e-6);
    }
  });
});

describe('over ice', () => {
  it('IAPWS R14-08(2011) table 3: 8.94735 Pa at 230 K, to the last printed digit', () => {
    expect(Math.abs(saturationPressureOverIce(celsiusOf(230)) - 8.94735)).toBeLessThan(0.000005);
  });

  it.each([
    [273.15, 611.154, 2e-6],
    [240, 27.272, 2e-4],
  ])(
    'Murphy and Koop 2005 table C1, ice, %d K: %d Pa; the formulations differ by up to 200 ppm',
    (kelvin, published, tolerance) => {
      expect(relativeDifference(saturationPressureOverIce(celsiusOf(kelvin)), published)).toBeLessThan(tolerance);
    },
  );

  it.each([
    [-60, 1.08, 0.005],
    [-20, 103.24, 0.005],
    [-10, 259.87, 0.005],
    [-5, 401.74, 0.005],
  ])(
    'ASHRAE Fundamentals 2017 ch. 1 table 3, %d °C: %d Pa to the last printed digit',
    (celsius, published, tolerance) => {
      expect(Math.abs(saturationPressureOverIce(celsius) - published)).toBeLessThanOrEqual(tolerance);
    },
  );

  it('Hyland and Wexler 1983, 173.15 K: 1.40510e-3 Pa within the 0.02 % between the formulations', () => {
    expect(relativeDifference(saturationPressureOverIce(-100), 1.4051e-3)).toBeLessThan(2e-4);
  });

  it('psychrolib (Hyland and Wexler 1983), −100 to 0 °C: within 0.04 %', () => {
    for (const celsius of steps(-100, 0, 1)) {
      const expected = psychrolib.GetSatVapPres(celsius);
      expect(relativeDifference(saturationPressureOverIce(celsius), expected), `${celsius} °C`).toBeLessThan(4e-4);
    }
  });

  it('meets the pressure over water at the triple point, within the six digits given for it', () => {
    expect(relativeDifference(saturationPressureOverIce(0.01), saturationPressureOverWater(0.01))).toBeLessThan(2e-7);
  });

  it('lies below the pressure over supercooled water everywhere: 0.822 of it at −20 °C, 0.679 at −40 °C', () => {
    for (const celsius of steps(-100, 0, 0.5)) {
      expect(saturationPressureOverIce(celsius)).toBeLessThan(saturationPressureOverWater(celsius));
    }
    expect(saturationPressureOverIce(-20) / saturationPressureOverWater(-20)).toBeCloseTo(0.8226, 3);
    expect(saturationPressureOverIce(-40) / saturationPressureOverWater(-40)).toBeCloseTo(0.679, 3);
  });
});

it.each([
  ['water', saturationPressureOverWater, saturationSlopeOverWater, -150, 370],
  ['ice', saturationPressureOverIce, saturationSlopeOverIce, -150, 0],
] as const)('the slope over %s is the derivative of the pressure', (_, pressure, slope, low, high) => {
  for (const celsius of steps(low, high, 1.37)) {
    // A central difference over ±1 mK is good to about 1e-8 here: truncation 1e-11, rounding 1e-16/(2e-3·0.05).
    const expected = centralDifference(pressure, celsius, 1e-3);
    expect(relativeDifference(slope(celsius), expected), `${celsius} °C`).toBeLessThan(1e-7);
  }
});

it('both pressures are finite and rise with temperature from −150 to 373 °C', () => {
  for (const pressure of [saturationPressureOverWater, saturationPressureOverIce]) {
    let last = 0;
    for (const celsius of steps(-150, 373, 0.5)) {
      const now = pressure(celsius);
      expect(Number.isFinite(now)).toBe(true);
      expect(now).toBeGreaterThan(last);
      last = now;
    }
  }
});

/** Murphy and Koop 2005 eq. 10 alone, written out a second time as printed. */
function murphyKoop(kelvin: number): number {
  const bracket = 53.878 - 1331.22 / kelvin - 9.44523 * Math.log(kelvin) + 0.014025 * kelvin;
  return Math.exp(
    54.842763 -
      6763.22 / kelvin -
      4.21 * Math.log(kelvin) +
      0.000367 * kelvin +
      Math.tanh(0.0415 * (kelvin - 218.8)) * bracket,
  );
}
