import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import type { AirState } from '../../../server/src/physics/air/moist-air.ts';
import { dewPoint, mixingRatio } from '../../../server/src/physics/air/quantities.ts';
import { saturatedVapourPressure } from '../../../server/src/physics/air/saturated-vapour.ts';
import { vapourPressureFromMixingRatio } from '../../../server/src/physics/air/vapour-pressure.ts';
import {
  mixingRatioFromWetBulb,
  wetBulb,
  wetBulbOver,
  wetBulbPhase,
} from '../../../server/src/physics/air/wet-bulb.ts';
import { anyBetween } from '../any-between.ts';
import { relativeDifference, steps } from '../numeric.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

const withMixingRatio = (airCelsius: number, ratio: number, pressure: number): AirState => ({
  airCelsius,
  pressure,
  vapourPressure: vapourPressureFromMixingRatio(ratio, pressure),
});

describe('published values', () => {
  it('ASHRAE Fundamentals 2017 ch. 1 example 1, 40 °C, wet bulb 20 °C: 0.0065 kg/kg as read from the chart', () => {
    expect(Math.abs(mixingRatioFromWetBulb({ celsius: 20, phase: 'water' }, 40, 101_325) - 0.0065)).toBeLessThan(5e-5);
  });

  it.each([
    [200, 0, 101_325, 45.07],
    [200, 1, 101_325, 88.15],
    [200, 0, 1e6, 90.47],
    [200, 0.5, 1e6, 148.49],
    [200, 1, 1e6, 159.92],
  ])(
    'ASHRAE RP-1485, %d °C, %d kg/kg, %d Pa: wet bulb %d °C within 0.6 K',
    (airCelsius, ratio, pressure, published) => {
      // Round specific heats (1.006, 1.86, 4.186 kJ/(kg·K)) stand for real gases up to 200 °C and 1 MPa.
      expect(Math.abs(wetBulb(withMixingRatio(airCelsius, ratio, pressure)).celsius - published)).toBeLessThan(0.6);
    },
  );
});

describe('against psychrolib, same equations with ideal saturation', () => {
  it('mixing ratio from wet bulb: 0.4 to 0.9 % of the saturated mixing ratio higher, over water and over ice', () => {
    for (const [celsius, bulb] of [
      [40, 20],
      [30, 25],
      [60, 55],
      [10, 3],
      [-1, -5],
      [-10, -11],
    ] as const) {
      const phase = bulb < 0 ? 'ice' : 'water';
      const ours = mixingRatioFromWetBulb({ celsius: bulb, phase }, celsius, 95_461);
      const saturated = psychrolib.GetHumRatioFromRelHum(bulb, 1, 95_461);
      const excess = (ours - psychrolib.GetHumRatioFromTWetBulb(celsius, bulb, 95_461)) / saturated;
      // f − 1 at these wet bulbs is 0.36 to 0.56 %, multiplied by p/(p − e), 1.2 at 55 °C.
      expect(excess, `${celsius} °C, ${bulb} °C`).toBeGreaterThan(0.0033);
      expect(excess, `${celsius} °C, ${bulb} °C`).toBeLessThan(0.009);
    }
  });

  it('wet bulb from mixing ratio: 0.01 to 0.12 K lower', () => {
    for (const celsius of steps(10, 60, 5)) {
      for (const share of [0.2, 0.5, 0.8]) {
        const ratio = share * psychrolib.GetHumRatioFromRelHum(celsius, 1, 101_325);
        const ideal = psychrolib.GetTWetBulbFromHumRatio(celsius, ratio, 101_325);
        const { celsius: ours, phase } = wetBulb(withMixingRatio(celsius, ratio, 101_325));
        if (phase === 'ice' || ideal < 0.5) continue;
        // Raising Ws* by (f − 1)·p/(p − e), 0.4 to 0.65 %, where it rises by 5 to 7 % per K; psychrolib stops at 0.001 K.
        expect(ideal - ours, `${celsius} °C, ${share}`).toBeGreaterThan(0.01);
        expect(ideal - ours, `${celsius} °C, ${share}`).toBeLessThan(0.12);
      }
    }
  });
});

describe('the solution', () => {
  const states = fc
    .record({
      airCelsius: anyBetween(-60, 250),
      pressure: anyBetween(2e4, 2e6),
      share: anyBetween(0, 1),
    })
    .map(({ airCelsius, pressure, share }): AirState => {
      const saturated = saturatedVapourPressure(airCelsius, pressure, 'water');
      return { airCelsius, pressure, vapourPressure: share * Math.min(saturated, 0.95 * pressure) };
    });

  it('satisfies ASHRAE eq. 33 and 35, from the mixing ratio and back', () => {
    fc.assert(
      fc.property(states, (state) => {
        const bulb = wetBulb(state);
        const again = mixingRatioFromWetBulb(bulb, state.airCelsius, state.pressure);
        // 1e-9 K of wet bulb moves the mixing ratio by up to 1e-9 of (1 + W)², steeply near boiling.
        expect(Math.abs(again - mixingRatio(state))).toBeLessThan(1e-8 * (1 + mixingRatio(state)) ** 2);
      }),
      { numRuns: 2000 },
    );
  });

  it('over water lies between dew point and air temperature', () => {
    fc.assert(
      fc.property(states, (state) => {
        const bulb = wetBulbOver(state, 'water');
        expect(bulb).toBeLessThanOrEqual(state.airCelsius);
        const point = dewPoint(state);
        if (point.ok) expect(bulb).toBeGreaterThan(point.value - 1e-6);
      }),
      { numRuns: 1000 },
    );
  });

  it('is the air temperature in saturated air', () => {
    const vapourPressure = saturatedVapourPressure(60, 101_325, 'water');
    const bulb = wetBulb({ airCelsius: 60, pressure: 101_325, vapourPressure });
    expect(Math.abs(bulb.celsius - 60)).toBeLessThan(1e-6);
  });

  it('air between saturation over ice and over water warms an iced wick above the air temperature', () => {
    const vapourPressure = saturatedVapourPressure(-20, 101_325, 'water') * 0.95;
    const bulb = wetBulb({ airCelsius: -20, pressure: 101_325, vapourPressure });
    expect(bulb.phase).toBe('ice');
    expect(bulb.celsius).toBeGreaterThan(-20);
    expect(bulb.celsius).toBeLessThan(-19);
  });
});

describe('the choice of phase', () => {
  it('a wick carries ice below 0 °C, and water at 0 °C', () => {
    expect([-10, -1e-9, 0, 1e-9, 10].map(wetBulbPhase)).toEqual(['ice', 'ice', 'water', 'water', 'water']);
  });

  it('an iced wick stands lower than a wet one in air above freezing', () => {
    const state = withMixingRatio(6, 0.0015, 101_325);
    expect(wetBulbOver(state, 'ice')).toBeLessThan(wetBulbOver(state, 'water'));
  });

  it('falls from water at 0 °C to ice below, by under 1 K in air of 6 °C', () => {
    const atZero = mixingRatioFromWetBulb({ celsius: 0, phase: 'water' }, 6, 101_325);
    const above = wetBulb(withMixingRatio(6, atZero * (1 + 1e-9), 101_325));
    const below = wetBulb(withMixingRatio(6, atZero * (1 - 1e-9), 101_325));
    expect(above.phase).toBe('water');
    expect(below.phase).toBe('ice');
    expect(above.celsius - below.celsius).toBeGreaterThan(0.1);
    expect(above.celsius - below.celsius).toBeLessThan(1);
  });

  it('30 °C, wet bulb 25 °C, 95461 Pa comes back', () => {
    const ratio = mixingRatioFromWetBulb({ celsius: 25, phase: 'water' }, 30, 95_461);
    expect(relativeDifference(wetBulb(withMixingRatio(30, ratio, 95_461)).celsius, 25)).toBeLessThan(1e-10);
  });
});
