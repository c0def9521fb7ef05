/**
 * What a point reports as a function of what it measures: Q(e, t, p) with e = U·f(ts, p)·ew(ts). The sensor gives the
 * humidity U at its own temperature ts; t is the air temperature taken, p the pressure.
 */
import { valueIfOk } from '../../base/outcome.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { partialsOfDewPointAt, partialsOfVapourPressure } from '../../physics/air/partials.ts';
import { relativeHumidityAt } from '../../physics/air/quantities.ts';
import { partialsOf } from '../../physics/air/state-quantities.ts';
import { vapourPressureFromRelativeHumidity } from '../../physics/air/vapour-pressure.ts';
import type { QuantityName } from '../../quantity/quantities.ts';
import { quantityValue } from '../facts/quantity-value.ts';

export interface Measurement {
  readonly quantity: QuantityName;
  /** What the sensor is warmer than the air by, K; 0 while it is not heated. */
  readonly rise: number;
  /** True where the air temperature is that of the unheated sensor, so that one error is in both. */
  readonly airIsSensor: boolean;
  /** The pressure that the report computes with, Pa, where it is not that of the state. */
  readonly ownPressure: number | undefined;
  /** For `dew-point-at`: the pressure that the gas is brought to, Pa. */
  readonly otherPressure: number | undefined;
}

/** What is measured, and the reported value itself, for what its signal adds. */
export type MeasuredInput =
  | 'sensor-humidity'
  | 'sensor-temperature'
  | 'air-temperature'
  | 'pressure'
  | 'reported-value';

/** A number for each measured input: a deviation in its unit, or a change of the result per unit. */
export type PerInput = Readonly<Record<MeasuredInput, number>>;

export const NO_DEVIATION: PerInput = {
  'sensor-humidity': 0,
  'sensor-temperature': 0,
  'air-temperature': 0,
  pressure: 0,
  'reported-value': 0,
};

/** A state of the air as the sensor has it. */
export interface SensedState {
  readonly state: AirState;
  readonly sensorCelsius: number;
  /** Relative humidity at the sensor, a fraction. */
  readonly sensorHumidity: number;
}

export function sensedState(state: AirState, rise: number): SensedState {
  const sensorCelsius = state.airCelsius + rise;
  return { state, sensorCelsius, sensorHumidity: relativeHumidityAt(state, sensorCelsius) };
}

/**
 * The reported value where every input deviates from the state by so much: the measurement model of the budget.
 * @returns undefined where the quantity has no value there
 */
export function reportedValue(
  { quantity, airIsSensor, ownPressure, otherPressure }: Measurement,
  { state, sensorCelsius, sensorHumidity }: SensedState,
  deviations: PerInput,
): number | undefined {
  const ofSensor = deviations['sensor-temperature'];
  const pressure = (ownPressure ?? state.pressure) + deviations.pressure;
  const vapourPressure = vapourPressureFromRelativeHumidity(
    sensorHumidity + deviations['sensor-humidity'],
    sensorCelsius + ofSensor,
    pressure,
  );
  const airCelsius = state.airCelsius + deviations['air-temperature'] + (airIsSensor ? ofSensor : 0);
  const value = valueIfOk(quantityValue(quantity, { airCelsius, pressure, vapourPressure }, otherPressure));
  return value === undefined ? undefined : value + deviations['reported-value'];
}

/**
 * How the reported value changes per unit of each measured input, exactly, by the chain rule: an error of the sensor's
 * temperature acts through the vapour pressure and, where the air temperature is taken from the sensor, through that
 * too. So what both share counts once, with its sign.
 * @returns undefined where the quantity has no value at the state
 */
export function sensitivities(measurement: Measurement, sensed: SensedState): PerInput | undefined {
  const { quantity, airIsSensor, ownPressure, otherPressure } = measurement;
  const state = ownPressure === undefined ? sensed.state : { ...sensed.state, pressure: ownPressure };
  const ofQuantity = partialsOfQuantity(quantity, state, otherPressure);
  if (ofQuantity === undefined) return undefined;
  const ofVapour = partialsOfVapourPressure(sensed.sensorHumidity, sensed.sensorCelsius, state.pressure);
  const perVapour = ofQuantity.vapourPressure;
  return {
    'sensor-humidity': perVapour * ofVapour.relativeHumidity,
    'sensor-temperature': perVapour * ofVapour.sensorCelsius + (airIsSensor ? ofQuantity.airCelsius : 0),
    'air-temperature': ofQuantity.airCelsius,
    pressure: ofQuantity.pressure + perVapour * ofVapour.pressure,
    'reported-value': 1,
  };
}

function partialsOfQuantity(quantity: QuantityName, state: AirState, otherPressure: number | undefined) {
  if (quantity !== 'dew-point-at') return valueIfOk(partialsOf(state, quantity));
  return otherPressure === undefined ? undefined : valueIfOk(partialsOfDewPointAt(state, otherPressure));
}
