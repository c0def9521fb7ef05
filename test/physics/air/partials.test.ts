import { describe, expect, it } from 'vitest';
import type { AirState } from '../../../server/src/physics/air/moist-air.ts';
import { partialsOfDewPointAt, partialsOfVapourPressure } from '../../../server/src/physics/air/partials.ts';
import { dewPointAt } from '../../../server/src/physics/air/quantities.ts';
import { saturatedVapourPressure } from '../../../server/src/physics/air/saturated-vapour.ts';
import {
  HUMIDITY_QUANTITIES,
  partialsOf,
  quantityOf,
  type StateQuantity,
} from '../../../server/src/physics/air/state-quantities.ts';
import { vapourPressureFromRelativeHumidity } from '../../../server/src/physics/air/vapour-pressure.ts';
import { centralDifference, relativeDifference } from '../numeric.ts';

const QUANTITIES: readonly StateQuantity[] = [...HUMIDITY_QUANTITIES, 'air-temperature', 'density'];

/** Air temperature, pressure, share of saturation over water: kilns, provers, cold stores, compressed air, past boiling. */
const STATES = [
  [75, 99_000, 0.92],
  [38, 101_325, 0.8],
  [20, 101_325, 0.3],
  [-18, 98_000, 0.7],
  [-40, 101_325, 0.6],
  [60, 8e5, 0.5],
  [110, 3e5, 0.7],
  [130, 101_325, 0.2],
].map(([airCelsius = 0, pressure = 0, share = 0]): AirState => {
  return { airCelsius, pressure, vapourPressure: share * saturatedVapourPressure(airCelsius, pressure, 'water') };
});

const DRY: AirState = { airCelsius: -10, pressure: 101_325, vapourPressure: 0 };

const valueAt = (state: AirState, quantity: StateQuantity): number => {
  const value = quantityOf(state, quantity);
  if (!value.ok) throw new Error(value.problem.kind);
  return value.value;
};

describe.each(QUANTITIES)('%s', (quantity) => {
  it('its partial derivatives are those of central differences', () => {
    let compared = 0;
    for (const state of STATES) {
      if (!quantityOf(state, quantity).ok) continue;
      const partials = partialsOf(state, quantity);
      if (!partials.ok) throw new Error(partials.problem.kind);
      for (const [argument, step] of [
        ['vapourPressure', state.vapourPressure * 1e-4],
        ['airCelsius', 1e-2],
        ['pressure', state.pressure * 1e-4],
      ] as const) {
        const difference = centralDifference(
          (at) => valueAt({ ...state, [argument]: at }, quantity),
          state[argument],
          step,
        );
        // Steps of 0.01 % and 10 mK: the truncation is under 1e-6 relative; solvers add 1e-10 of noise over the step.
        const tolerance = 2e-6 * Math.abs(difference) + 1e-9 / step;
        const where = `${argument} at ${state.airCelsius} °C, ${state.pressure} Pa`;
        expect(Math.abs(partials.value[argument] - difference), where).toBeLessThan(tolerance);
        compared++;
      }
    }
    expect(compared).toBeGreaterThanOrEqual(6);
  });

  it('has partial derivatives exactly where it has a value', () => {
    for (const state of [...STATES, DRY]) {
      expect(partialsOf(state, quantity).ok).toBe(quantityOf(state, quantity).ok);
    }
  });
});

it('dew point at another pressure: all four partial derivatives are those of central differences', () => {
  const [state] = STATES;
  if (state === undefined) throw new Error('no state');
  const other = 4e5;
  const partials = partialsOfDewPointAt(state, other);
  if (!partials.ok) throw new Error(partials.problem.kind);
  const at = (changed: AirState, pressure: number): number => {
    const point = dewPointAt(changed, pressure);
    if (!point.ok) throw new Error(point.problem.kind);
    return point.value;
  };
  const perVapour = centralDifference((e) => at({ ...state, vapourPressure: e }, other), state.vapourPressure, 3);
  const perPressure = centralDifference((p) => at({ ...state, pressure: p }, other), state.pressure, 10);
  const perOther = centralDifference((p) => at(state, p), other, 40);
  // Steps of 0.01 %: truncation under 1e-7, solver noise of 1e-10 K over changes of 3e-3 K.
  expect(relativeDifference(partials.value.vapourPressure, perVapour)).toBeLessThan(1e-6);
  expect(relativeDifference(partials.value.pressure, perPressure)).toBeLessThan(1e-6);
  expect(relativeDifference(partials.value.otherPressure, perOther)).toBeLessThan(1e-6);
  expect(partials.value.airCelsius).toBe(0);
});

it('dry air has no dew point, at another pressure neither, and nothing that it could change by', () => {
  for (const partials of [
    partialsOf(DRY, 'dew-point'),
    partialsOf(DRY, 'dew-point-depression'),
    partialsOfDewPointAt(DRY, 4e5),
  ]) {
    expect(partials).toMatchObject({ ok: false, problem: { kind: 'too-dry-for-a-point' } });
  }
});

it('the vapour pressure that a sensor measures: partial derivatives are those of central differences', () => {
  const partials = partialsOfVapourPressure(0.6, 80, 99_000);
  const perHumidity = centralDifference((u) => vapourPressureFromRelativeHumidity(u, 80, 99_000), 0.6, 1e-3);
  const perSensor = centralDifference((t) => vapourPressureFromRelativeHumidity(0.6, t, 99_000), 80, 1e-3);
  const perPressure = centralDifference((p) => vapourPressureFromRelativeHumidity(0.6, 80, p), 99_000, 10);
  expect(relativeDifference(partials.relativeHumidity, perHumidity)).toBeLessThan(1e-9);
  expect(relativeDifference(partials.sensorCelsius, perSensor)).toBeLessThan(1e-8);
  expect(relativeDifference(partials.pressure, perPressure)).toBeLessThan(1e-6);
});
