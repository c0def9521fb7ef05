/**
 * Makes states of moist air out of what is known about them. This is the boundary where ranges and possibility are
 * checked, once; what is computed from a state afterwards needs no further checks of its inputs.
 */
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import { checkValidity } from '../formula.ts';
import { dewPointOfVapour, type NoSuchPoint } from './dew-point.ts';

import type { AirState } from './moist-air.ts';
import { saturatedVapourPressure } from './saturated-vapour.ts';
import { saturationFormulaOverWater } from './saturation.ts';
import type { StateProblem } from './state-problem.ts';
import { type KnownHumidity, vapourPressureOf } from './state-quantities.ts';
import { vapourPressureFromDewPoint } from './vapour-pressure.ts';

/** The relative humidity of saturated air, over water. */
export const SATURATED = 1;

/** Relative humidity may exceed 1 by this much and count as saturated: it covers the rounding of computed inputs. */
export const SATURATION_TOLERANCE = 1e-6;

/**
 * The state of air at an air temperature in °C (−150.15 to 373.946), a pressure in Pa and one known humidity, or the
 * reason why no such air exists. Saturation means over water, also below 0 °C, so that air between saturation over
 * ice and over water is accepted, as it occurs. A wet bulb below 0 °C is taken as that of an iced wick.
 * Worked value: 25 °C, 101325 Pa and 50 %RH give a vapour pressure of 1591.4 Pa.
 */
export function airState(
  airCelsius: number,
  pressure: number,
  humidity: KnownHumidity,
): Outcome<AirState, StateProblem> {
  const unusable = unusableConditions(airCelsius, pressure, humidity.value);
  if (unusable !== undefined) return fail(unusable);
  const vapourPressure = vapourPressureOf(humidity, airCelsius, pressure);
  if (!vapourPressure.ok) return vapourPressure;
  const state: AirState = { airCelsius, pressure, vapourPressure: vapourPressure.value };
  const impossible = impossibility(state, humidity);
  return impossible === undefined ? succeed(state) : fail(impossible);
}

/**
 * The state of air whose relative humidity over water (fraction, 0 to 1) and dew point in °C are known at a pressure
 * in Pa. Its air temperature is where the air would saturate at e/U, so it is the dew point of that vapour pressure.
 * 0 %RH has none. Worked value: 0.5 and 13.87 °C at 101325 Pa give 25.0 °C.
 */
export function airStateFromRelativeHumidityAndDewPoint(
  relativeHumidity: number,
  dewPointCelsius: number,
  pressure: number,
): Outcome<AirState, StateProblem | NoSuchPoint> {
  const quantity = 'relative-humidity';
  const unusable = unusableConditions(dewPointCelsius, pressure, relativeHumidity);
  if (unusable !== undefined) return fail(unusable);
  if (relativeHumidity < 0) return fail({ kind: 'negative-amount', quantity, value: relativeHumidity });
  if (relativeHumidity === 0) return fail({ kind: 'no-air-temperature-at-zero-humidity' });
  if (relativeHumidity > 1 + SATURATION_TOLERANCE) {
    return fail({ kind: 'supersaturated', quantity, relativeHumidity, airCelsius: dewPointCelsius });
  }
  const vapourPressure = vapourPressureFromDewPoint(dewPointCelsius, pressure);
  const air = dewPointOfVapour(vapourPressure / relativeHumidity, pressure);
  if (!air.ok) return air;
  return airState(air.value, pressure, { quantity: 'vapour-pressure', value: vapourPressure });
}

function unusableConditions(airCelsius: number, pressure: number, value: number): StateProblem | undefined {
  if (!Number.isFinite(value)) return { kind: 'not-a-number', argument: 'value' };
  if (!Number.isFinite(airCelsius)) return { kind: 'not-a-number', argument: 'celsius' };
  if (!Number.isFinite(pressure)) return { kind: 'not-a-number', argument: 'pressure' };
  if (!(pressure > 0)) return { kind: 'pressure-not-positive', pressure };
  return checkValidity(saturationFormulaOverWater(airCelsius), { celsius: airCelsius });
}

function impossibility(state: AirState, { quantity, value }: KnownHumidity): StateProblem | undefined {
  const { airCelsius, pressure, vapourPressure } = state;
  const relativeHumidity = vapourPressure / saturatedVapourPressure(airCelsius, pressure, 'water');
  if (relativeHumidity > 1 + SATURATION_TOLERANCE) {
    switch (quantity) {
      case 'dew-point':
        return { kind: 'dew-point-above-air-temperature', celsius: value, airCelsius, relativeHumidity };
      case 'dew-point-depression':
        return { kind: 'dew-point-above-air-temperature', celsius: airCelsius - value, airCelsius, relativeHumidity };
      case 'frost-point':
        return { kind: 'frost-point-above-saturation', celsius: value, airCelsius, relativeHumidity };
      case 'wet-bulb':
        return { kind: 'wet-bulb-above-air-temperature', celsius: value, airCelsius, relativeHumidity };
      default:
        return { kind: 'supersaturated', quantity, relativeHumidity, airCelsius };
    }
  }
  if (vapourPressure >= pressure) return { kind: 'vapour-pressure-above-pressure', vapourPressure, pressure };
  return undefined;
}
