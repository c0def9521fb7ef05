/** The humidity quantities of a state of air. Each function takes a possible state, as `airState` makes them. */
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import {
  GAS_CONSTANT_OF_DRY_AIR,
  GAS_CONSTANT_OF_WATER_VAPOUR,
  kelvinOf,
  MOLAR_MASS_RATIO,
  TRIPLE_POINT_CELSIUS,
} from '../constants.ts';
import { dewPointOfVapour, frostPointOfVapour, type NoSuchPoint } from './dew-point.ts';
import { type AirState, ENTHALPY_OF_VAPOUR_AT_ZERO, HEAT_OF_DRY_AIR, HEAT_OF_VAPOUR } from './moist-air.ts';
import { saturatedVapourPressure } from './saturated-vapour.ts';

/** Relative humidity over ice is not defined for air above the triple point. °C. */
export interface NoIceAtAirTemperature {
  readonly kind: 'no-ice-at-air-temperature';
  readonly airCelsius: number;
}

/**
 * Relative humidity over liquid water (fraction), also below 0 °C: U = e/(f(t, p)·es(t)). WMO-No. 8 ch. 4.
 * Above the boiling point it stays below 1, since e cannot exceed the pressure. Worked value: 1174.26 Pa at 20 °C and
 * 101325 Pa is 0.5.
 */
export function relativeHumidity(state: AirState): number {
  return relativeHumidityAt(state, state.airCelsius);
}

/**
 * Relative humidity (fraction, over water) that a sensor at a temperature in °C sees in this air: the vapour pressure
 * is the air's, the saturation that of the sensor's temperature. It is how heating a head keeps its sensor dry, and
 * above 1 it says that the sensor condenses. Worked value: saturated air of 60 °C at 101325 Pa, sensor 5 K warmer: 0.796.
 */
export function relativeHumidityAt(state: AirState, sensorCelsius: number): number {
  return state.vapourPressure / saturatedVapourPressure(sensorCelsius, state.pressure, 'water');
}

/**
 * Relative humidity over ice (fraction), for air up to 0.01 °C: e/(f·ei). Above 1 where only supercooled water is.
 * Worked value: −10 °C, 50 %RH over water and 101325 Pa is 0.551 over ice.
 */
export function relativeHumidityOverIce(state: AirState): Outcome<number, NoIceAtAirTemperature> {
  const { airCelsius, pressure, vapourPressure } = state;
  if (airCelsius > TRIPLE_POINT_CELSIUS) return fail({ kind: 'no-ice-at-air-temperature', airCelsius });
  return succeed(vapourPressure / saturatedVapourPressure(airCelsius, pressure, 'ice'));
}

/**
 * Dew point in °C, over water also below 0 °C; see {@link dewPointOfVapour}.
 * Worked value: 20 °C, 50 %RH and 101325 Pa give 9.28 °C.
 */
export function dewPoint(state: AirState): Outcome<number, NoSuchPoint> {
  return dewPointOfVapour(state.vapourPressure, state.pressure);
}

/**
 * Frost point in °C, over ice, up to 0.01 °C; see {@link frostPointOfVapour}.
 * Worked value: −10 °C, 50 %RH over water and 101325 Pa give −16.54 °C.
 */
export function frostPoint(state: AirState): Outcome<number, NoSuchPoint> {
  return frostPointOfVapour(state.vapourPressure, state.pressure);
}

/**
 * Dew point in °C after the gas has been brought to another pressure in Pa, its mole fraction of vapour unchanged.
 * Worked value: dew point 10 °C at 101325 Pa, compressed to 8 times that pressure, gives 45.1 °C.
 */
export function dewPointAt(state: AirState, otherPressure: number): Outcome<number, NoSuchPoint> {
  return dewPointOfVapour((state.vapourPressure / state.pressure) * otherPressure, otherPressure);
}

/**
 * Dew-point depression in K: air temperature less dew point.
 * Worked value: 20 °C, 50 %RH and 101325 Pa give 10.72 K.
 */
export function dewPointDepression(state: AirState): Outcome<number, NoSuchPoint> {
  const point = dewPoint(state);
  return point.ok ? succeed(state.airCelsius - point.value) : point;
}

/**
 * Mixing ratio in kg of vapour per kg of dry air: W = ε·e/(p − e), ASHRAE Fundamentals 2017 ch. 1 eq. 20, with the
 * molar masses of CIPM-2007. Worked value: 1603.35 Pa at 101325 Pa is 0.0100 kg/kg.
 */
export function mixingRatio({ pressure, vapourPressure }: AirState): number {
  return (MOLAR_MASS_RATIO * vapourPressure) / (pressure - vapourPressure);
}

/**
 * Specific humidity in kg of vapour per kg of moist air: W/(1 + W), ASHRAE Fundamentals 2017 ch. 1 eq. 9b.
 * Worked value: 20 °C, 50 %RH and 101325 Pa give 0.00724 kg/kg.
 */
export function specificHumidity({ pressure, vapourPressure }: AirState): number {
  return (MOLAR_MASS_RATIO * vapourPressure) / (pressure - (1 - MOLAR_MASS_RATIO) * vapourPressure);
}

/**
 * Volume fraction of vapour: moles of vapour per mole of moist air, e/p.
 * Worked value: 20 °C, 50 %RH and 101325 Pa give 0.01159.
 */
export function volumeFraction({ pressure, vapourPressure }: AirState): number {
  return vapourPressure / pressure;
}

/**
 * Absolute humidity in kg of vapour per m³ of moist air: e/(Rv·T), the compressibility factor taken as 1. That costs
 * under 0.1 % at room temperature and ambient pressure, up to 1 % close to boiling.
 * Worked value: 2348.5 Pa at 20 °C is 0.01736 kg/m³.
 */
export function absoluteHumidity({ airCelsius, vapourPressure }: AirState): number {
  return vapourPressure / (GAS_CONSTANT_OF_WATER_VAPOUR * kelvinOf(airCelsius));
}

/**
 * Density of moist air in kg/m³, both gases ideal; the compressibility, 0.04 % at room conditions (CIPM-2007), is
 * taken as 1. Worked value: 20 °C, 101325 Pa, 50 %RH is 1.1989 kg/m³.
 */
export function density({ airCelsius, pressure, vapourPressure }: AirState): number {
  const dryAir = (pressure - vapourPressure) / GAS_CONSTANT_OF_DRY_AIR;
  return (dryAir + vapourPressure / GAS_CONSTANT_OF_WATER_VAPOUR) / kelvinOf(airCelsius);
}

/**
 * Specific enthalpy in J per kg of dry air, zero for dry air and liquid water at 0 °C: ideal mixture, ASHRAE
 * Fundamentals 2017 ch. 1 eq. 30. Worked value: 30 °C and 0.02 kg/kg is 81316 J/kg.
 */
export function specificEnthalpy(state: AirState): number {
  const { airCelsius } = state;
  return HEAT_OF_DRY_AIR * airCelsius + mixingRatio(state) * (ENTHALPY_OF_VAPOUR_AT_ZERO + HEAT_OF_VAPOUR * airCelsius);
}

/**
 * Vapour pressure deficit in Pa: f·es at the air temperature (over water) less the vapour pressure.
 * Worked value: 20 °C, 50 %RH and 101325 Pa give 1174.26 Pa.
 */
export function vapourPressureDeficit({ airCelsius, pressure, vapourPressure }: AirState): number {
  return saturatedVapourPressure(airCelsius, pressure, 'water') - vapourPressure;
}
