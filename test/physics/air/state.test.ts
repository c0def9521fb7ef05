import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AirState, HumidityQuantity } from '../../../server/src/physics/air/moist-air.ts';
import { saturationPressureOverWater } from '../../../server/src/physics/air/saturation.ts';
import { airState, airStateFromRelativeHumidityAndDewPoint } from '../../../server/src/physics/air/state.ts';
import { HUMIDITY_QUANTITIES, quantityOf } from '../../../server/src/physics/air/state-quantities.ts';
import { anyBetween } from '../any-between.ts';
import { relativeDifference } from '../numeric.ts';

const air = (airCelsius: number, pressure: number, quantity: HumidityQuantity, value: number) =>
  airState(airCelsius, pressure, { quantity, value });

const possibleStates = fc
  .record({
    airCelsius: anyBetween(-60, 180),
    pressure: anyBetween(5e4, 1e6),
    share: anyBetween(0.01, 0.999),
  })
  .map(({ airCelsius, pressure, share }): AirState => {
    const saturation = Math.min(saturationPressureOverWater(airCelsius), 0.9 * pressure);
    return { airCelsius, pressure, vapourPressure: share * saturation };
  });

describe('one known humidity', () => {
  it('25 °C, 50 %RH, 101325 Pa: 1584.9 Pa of pure vapour (IAPWS SR1-86) raised by f = 1.004109', () => {
    const state = air(25, 101_325, 'relative-humidity', 0.5);
    expect(state.ok && relativeDifference(state.value.vapourPressure, 0.5 * 3169.8245 * 1.004109)).toBeLessThan(1e-6);
  });

  it.each(HUMIDITY_QUANTITIES)('%s of a state gives the state back', (quantity) => {
    let compared = 0;
    fc.assert(
      fc.property(possibleStates, (state) => {
        const known = quantityOf(state, quantity);
        if (!known.ok) return;
        // The choice of phase leaves out a band of wet bulbs just below 0 °C, and does not come back from it.
        if (quantity === 'wet-bulb' && known.value > -1.5 && known.value < 0.5) return;
        const again = air(state.airCelsius, state.pressure, quantity, known.value);
        if (!again.ok) throw new Error(`${again.problem.kind} at ${JSON.stringify(state)}`);
        // Differences of large numbers (enthalpy, deficit, wet bulb) lose digits against little vapour in dry air.
        const tolerance = 1e-9 * state.vapourPressure + 1e-10 * state.pressure;
        expect(Math.abs(again.value.vapourPressure - state.vapourPressure)).toBeLessThan(tolerance);
        compared++;
      }),
      { numRuns: 500 },
    );
    expect(compared).toBeGreaterThan(50);
  });

  it('relative humidity and dew point give the air temperature: 0.5 and 13.868 °C are 25.00 °C, 1 is saturated air', () => {
    const state = airStateFromRelativeHumidityAndDewPoint(0.5, 13.8682392, 101_325);
    expect(state.ok && Math.abs(state.value.airCelsius - 25)).toBeLessThan(1e-6);
    const saturated = airStateFromRelativeHumidityAndDewPoint(1, 13.8682392, 101_325);
    expect(saturated.ok && Math.abs(saturated.value.airCelsius - 13.8682392)).toBeLessThan(1e-6);
  });
});

describe('impossible states', () => {
  it('dew point above air temperature', () => {
    expect(air(20, 101_325, 'dew-point', 20.5)).toMatchObject({
      ok: false,
      problem: { kind: 'dew-point-above-air-temperature', celsius: 20.5, airCelsius: 20 },
    });
    expect(air(20, 101_325, 'dew-point-depression', -0.5)).toMatchObject({
      problem: { kind: 'dew-point-above-air-temperature', celsius: 20.5 },
    });
  });

  it('a dew point equal to the air temperature is saturated air, and possible', () => {
    expect(air(20, 101_325, 'dew-point', 20).ok).toBe(true);
    expect(air(20, 101_325, 'wet-bulb', 20).ok).toBe(true);
    expect(air(20, 101_325, 'relative-humidity', 1).ok).toBe(true);
  });

  it('wet bulb above air temperature', () => {
    expect(air(20, 101_325, 'wet-bulb', 21)).toMatchObject({ problem: { kind: 'wet-bulb-above-air-temperature' } });
  });

  it('frost point a little above the air temperature is air between the two saturations; far above is impossible', () => {
    expect(air(-20, 101_325, 'frost-point', -19).ok).toBe(true);
    expect(air(-20, 101_325, 'frost-point', -17)).toMatchObject({ problem: { kind: 'frost-point-above-saturation' } });
  });

  it('relative humidity above 1 beyond the tolerance of 1e-6', () => {
    expect(air(60, 101_325, 'relative-humidity', 1 + 0.5e-6).ok).toBe(true);
    const problem = { kind: 'supersaturated', quantity: 'relative-humidity', airCelsius: 60 };
    expect(air(60, 101_325, 'relative-humidity', 1.00001)).toMatchObject({ problem });
  });

  it('100 %RH above the boiling point would be vapour above the total pressure', () => {
    const outcome = air(120, 101_325, 'relative-humidity', 1);
    expect(outcome).toMatchObject({ problem: { kind: 'vapour-pressure-above-pressure', pressure: 101_325 } });
    // IAPWS SR1-86 at 120 °C: 198671.4 Pa, so that 51.0 %RH is pure steam and 50 %RH is still possible.
    expect(air(120, 101_325, 'relative-humidity', 0.511).ok).toBe(false);
    expect(air(120, 101_325, 'relative-humidity', 0.5).ok).toBe(true);
  });

  it('pure steam is not moist air', () => {
    expect(air(150, 101_325, 'vapour-pressure', 101_325)).toMatchObject({
      problem: { kind: 'vapour-pressure-above-pressure' },
    });
    expect(air(150, 101_325, 'volume-fraction', 1.2)).toMatchObject({ ok: false });
  });

  it.each([
    ['relative-humidity', -0.01, 'relative-humidity'],
    ['vapour-pressure', -1, 'vapour-pressure'],
    ['mixing-ratio', -0.001, 'mixing-ratio'],
    ['specific-enthalpy', 20_000, 'mixing-ratio'],
    ['specific-enthalpy', -1e9, 'mixing-ratio'],
    ['wet-bulb', -10, 'mixing-ratio'],
    ['vapour-pressure-deficit', 5000, 'vapour-pressure'],
  ] as const)('%s of %d at 25 °C would need a negative amount', (given, value, quantity) => {
    expect(air(25, 101_325, given, value)).toMatchObject({ problem: { kind: 'negative-amount', quantity } });
  });

  it.each([
    ['relative-humidity', 5],
    ['relative-humidity-ice', -10],
    ['vapour-pressure', 5],
    ['mixing-ratio', 5],
    ['specific-humidity', 5],
    ['volume-fraction', 5],
    ['absolute-humidity', 5],
  ] as const)('nothing of %s is dry air, and possible', (quantity, airCelsius) => {
    expect(air(airCelsius, 101_325, quantity, 0)).toMatchObject({ ok: true, value: { vapourPressure: 0 } });
  });

  it('a wet bulb at or above the boiling point', () => {
    // IAPWS SR1-86 at 105 °C: 120.9 kPa.
    const boiling = air(150, 101_325, 'wet-bulb', 105);
    expect(boiling).toMatchObject({ problem: { kind: 'vapour-pressure-above-pressure', pressure: 101_325 } });
    if (boiling.ok || boiling.problem.kind !== 'vapour-pressure-above-pressure') throw new Error('no such problem');
    expect(boiling.problem.vapourPressure / 1000).toBeCloseTo(120.9, 1);
    const pressure = saturationPressureOverWater(100);
    expect(air(150, pressure, 'wet-bulb', 100)).toMatchObject({
      problem: { kind: 'vapour-pressure-above-pressure', vapourPressure: pressure },
    });
  });

  it('there is ice up to the triple point itself', () => {
    expect(air(0.01, 101_325, 'relative-humidity-ice', 0.5).ok).toBe(true);
    expect(air(5, 101_325, 'frost-point', 0.01).ok).toBe(true);
  });

  it('ice above the triple point', () => {
    for (const [quantity, value] of [
      ['frost-point', 1],
      ['relative-humidity-ice', 0.5],
    ] as const) {
      expect(air(10, 101_325, quantity, value)).toMatchObject({ problem: { kind: 'no-ice-above-triple-point' } });
    }
  });

  it('temperatures beyond the formulas are refused by the name of the formula', () => {
    const outside = (celsius: number) => air(celsius, 101_325, 'relative-humidity', 0.1);
    expect(outside(400)).toMatchObject({ problem: { formula: { id: 'saturation-over-water' }, value: 400 } });
    expect(outside(-160)).toMatchObject({ problem: { formula: { id: 'saturation-over-supercooled-water' } } });
    expect(air(20, 101_325, 'dew-point', 500)).toMatchObject({ problem: { kind: 'outside-formula', value: 500 } });
  });

  it('pressures that are none, and inputs that are no numbers', () => {
    expect(air(20, 0, 'relative-humidity', 0.5)).toMatchObject({ problem: { kind: 'pressure-not-positive' } });
    expect(air(Number.NaN, 1e5, 'relative-humidity', 0.5)).toMatchObject({ problem: { argument: 'celsius' } });
    expect(air(20, 1e5, 'dew-point', Number.POSITIVE_INFINITY)).toMatchObject({ problem: { argument: 'value' } });
  });

  it('relative humidity and dew point: 0 %RH has no air temperature, over 100 %RH is supersaturated', () => {
    const kindOf = (relativeHumidity: number) => airStateFromRelativeHumidityAndDewPoint(relativeHumidity, 10, 1e5);
    expect(kindOf(0)).toMatchObject({ problem: { kind: 'no-air-temperature-at-zero-humidity' } });
    expect(kindOf(1.1)).toMatchObject({
      problem: { kind: 'supersaturated', quantity: 'relative-humidity', relativeHumidity: 1.1 },
    });
    expect(kindOf(1e-6)).toMatchObject({ problem: { kind: 'too-wet-for-a-dew-point' } });
  });

  it('relative humidity and dew point: no negative humidity, no numbers that are none, no pressure of nothing', () => {
    const of = airStateFromRelativeHumidityAndDewPoint;
    expect(of(-0.1, 10, 1e5)).toEqual({
      ok: false,
      problem: { kind: 'negative-amount', quantity: 'relative-humidity', value: -0.1 },
    });
    expect(of(Number.NaN, 10, 1e5)).toMatchObject({ problem: { kind: 'not-a-number', argument: 'value' } });
    expect(of(0.5, Number.NaN, 1e5)).toMatchObject({ problem: { kind: 'not-a-number', argument: 'celsius' } });
    expect(of(0.5, 10, 0)).toMatchObject({ problem: { kind: 'pressure-not-positive' } });
    expect(of(0.5, 400, 1e5)).toMatchObject({ problem: { kind: 'outside-formula', value: 400 } });
  });
});

it('whatever is given, the answer is a possible state or a typed problem, and every quantity of it is finite', () => {
  const anything = fc.oneof(anyBetween(-300, 600), fc.double());
  fc.assert(
    fc.property(
      anything,
      anything,
      fc.constantFrom(...HUMIDITY_QUANTITIES),
      anything,
      (airCelsius, pressure, quantity, value) => {
        const outcome = air(airCelsius, pressure, quantity, value);
        if (!outcome.ok) {
          expect(outcome.problem.kind).toMatch(/^[a-z-]+$/);
          return;
        }
        const { vapourPressure } = outcome.value;
        expect(vapourPressure >= 0 && vapourPressure < pressure).toBe(true);
        for (const asked of [...HUMIDITY_QUANTITIES, 'density', 'air-temperature'] as const) {
          const found = quantityOf(outcome.value, asked);
          if (found.ok) expect(Number.isFinite(found.value), `${asked} of ${JSON.stringify(outcome.value)}`).toBe(true);
        }
      },
    ),
    { numRuns: 20_000 },
  );
});

it('relative humidity and dew point of any state give its air temperature back within 1e-6 K', () => {
  fc.assert(
    fc.property(possibleStates, ({ airCelsius, pressure, vapourPressure }) => {
      const state = { airCelsius, pressure, vapourPressure };
      const humidity = quantityOf(state, 'relative-humidity');
      const point = quantityOf(state, 'dew-point');
      if (!humidity.ok || !point.ok) return;
      const again = airStateFromRelativeHumidityAndDewPoint(humidity.value, point.value, pressure);
      expect(again.ok && Math.abs(again.value.airCelsius - airCelsius)).toBeLessThan(1e-6);
    }),
    { numRuns: 500 },
  );
});
