/**
 * Exact partial derivatives of every quantity of a state of air, for uncertainty budgets (JCGM 100:2008, 5.1.3): the
 * functions of quantities.ts differentiated in closed form, those of dew point, frost point and wet bulb by the
 * implicit-function theorem, the enhancement factor included. Worked value: the dew point at 20 °C, 101325 Pa and
 * 2348.5 Pa changes by 0.00687 K per Pa of vapour pressure.
 */
import { type Outcome, succeed } from '../../base/outcome.ts';
import { GAS_CONSTANT_OF_DRY_AIR, GAS_CONSTANT_OF_WATER_VAPOUR, kelvinOf, MOLAR_MASS_RATIO } from '../constants.ts';
import type { NoSuchPoint } from './dew-point.ts';
import { type AirState, ENTHALPY_OF_VAPOUR_AT_ZERO, HEAT_OF_DRY_AIR, HEAT_OF_VAPOUR } from './moist-air.ts';
import {
  density,
  dewPoint,
  dewPointAt,
  frostPoint,
  mixingRatio,
  type NoIceAtAirTemperature,
  relativeHumidityOverIce,
} from './quantities.ts';
import { saturatedVapour } from './saturated-vapour.ts';
import type { WaterPhase } from './saturation.ts';

/**
 * Change of a quantity, in its SI unit, per Pa of vapour pressure, per K of air temperature and per Pa of total
 * pressure, each with the other two held.
 */
export interface Partials {
  readonly vapourPressure: number;
  readonly airCelsius: number;
  readonly pressure: number;
}

/** As written at `dewPoint`, over water or ice, and there only where the air has such a point. */
export function partialsOfDewPoint(state: AirState): Outcome<Partials, NoSuchPoint> {
  const point = dewPoint(state);
  return point.ok ? succeed(partialsOfSaturationPoint(point.value, state.pressure, 'water')) : point;
}

export function partialsOfFrostPoint(state: AirState): Outcome<Partials, NoSuchPoint> {
  const point = frostPoint(state);
  return point.ok ? succeed(partialsOfSaturationPoint(point.value, state.pressure, 'ice')) : point;
}

export function partialsOfDewPointDepression(state: AirState): Outcome<Partials, NoSuchPoint> {
  const ofPoint = partialsOfDewPoint(state);
  if (!ofPoint.ok) return ofPoint;
  const { vapourPressure, pressure } = ofPoint.value;
  return succeed({ vapourPressure: -vapourPressure, airCelsius: 1, pressure: -pressure });
}

export function partialsOfRelativeHumidityOverIce(state: AirState): Outcome<Partials, NoIceAtAirTemperature> {
  const defined = relativeHumidityOverIce(state);
  return defined.ok ? succeed(partialsOfRelativeHumidity(state, 'ice')) : defined;
}

export function partialsOfVapourPressureDeficit({ airCelsius, pressure }: AirState): Partials {
  const saturated = saturatedVapour(airCelsius, pressure, 'water');
  return { vapourPressure: -1, airCelsius: saturated.perCelsius, pressure: saturated.perPressure };
}

export function partialsOfSpecificHumidity({ pressure, vapourPressure }: AirState): Partials {
  const divisor = (pressure - (1 - MOLAR_MASS_RATIO) * vapourPressure) ** 2;
  return {
    vapourPressure: (MOLAR_MASS_RATIO * pressure) / divisor,
    airCelsius: 0,
    pressure: (-MOLAR_MASS_RATIO * vapourPressure) / divisor,
  };
}

export function partialsOfVolumeFraction({ pressure, vapourPressure }: AirState): Partials {
  return { vapourPressure: 1 / pressure, airCelsius: 0, pressure: -vapourPressure / pressure ** 2 };
}

export function partialsOfAbsoluteHumidity({ airCelsius, vapourPressure }: AirState): Partials {
  const kelvin = kelvinOf(airCelsius);
  return {
    vapourPressure: 1 / (GAS_CONSTANT_OF_WATER_VAPOUR * kelvin),
    airCelsius: -vapourPressure / (GAS_CONSTANT_OF_WATER_VAPOUR * kelvin ** 2),
    pressure: 0,
  };
}

export function partialsOfDensity(state: AirState): Partials {
  const kelvin = kelvinOf(state.airCelsius);
  return {
    vapourPressure: (1 / GAS_CONSTANT_OF_WATER_VAPOUR - 1 / GAS_CONSTANT_OF_DRY_AIR) / kelvin,
    airCelsius: -density(state) / kelvin,
    pressure: 1 / (GAS_CONSTANT_OF_DRY_AIR * kelvin),
  };
}

/** As {@link Partials} for the dew point at another pressure in Pa, with its change per Pa of that pressure. */
export interface PartialsAtOtherPressure extends Partials {
  readonly otherPressure: number;
}

/**
 * Exact partial derivatives of the dew point after the gas has been brought to another pressure in Pa.
 * Worked value: 20 °C, 50 %RH and 101325 Pa, compressed to 8 times that pressure, give 0.0165 K/Pa of vapour pressure.
 */
export function partialsOfDewPointAt(
  state: AirState,
  otherPressure: number,
): Outcome<PartialsAtOtherPressure, NoSuchPoint> {
  const point = dewPointAt(state, otherPressure);
  if (!point.ok) return point;
  const { pressure, vapourPressure } = state;
  const ofPoint = partialsOfSaturationPoint(point.value, otherPressure, 'water');
  return succeed({
    vapourPressure: (ofPoint.vapourPressure * otherPressure) / pressure,
    airCelsius: 0,
    pressure: (-ofPoint.vapourPressure * vapourPressure * otherPressure) / pressure ** 2,
    otherPressure: (ofPoint.vapourPressure * vapourPressure) / pressure + ofPoint.pressure,
  });
}

/** Change of the vapour pressure in Pa per unit of relative humidity, per K of the sensor and per Pa of pressure. */
export interface PartialsOfVapourPressure {
  readonly relativeHumidity: number;
  readonly sensorCelsius: number;
  readonly pressure: number;
}

/**
 * Exact partial derivatives of the vapour pressure that a sensor measures: e = U·f·es, with its relative humidity
 * over water (fraction), its own temperature in °C and the pressure in Pa.
 * Worked value: 0.5 at 20 °C and 101325 Pa gives 72.77 Pa per K of the sensor.
 */
export function partialsOfVapourPressure(
  relativeHumidity: number,
  sensorCelsius: number,
  pressure: number,
): PartialsOfVapourPressure {
  const saturated = saturatedVapour(sensorCelsius, pressure, 'water');
  return {
    relativeHumidity: saturated.vapourPressure,
    sensorCelsius: relativeHumidity * saturated.perCelsius,
    pressure: relativeHumidity * saturated.perPressure,
  };
}

export function partialsOfRelativeHumidity(
  { airCelsius, pressure, vapourPressure }: AirState,
  phase: WaterPhase,
): Partials {
  const saturated = saturatedVapour(airCelsius, pressure, phase);
  const perSaturation = -vapourPressure / saturated.vapourPressure ** 2;
  return {
    vapourPressure: 1 / saturated.vapourPressure,
    airCelsius: perSaturation * saturated.perCelsius,
    pressure: perSaturation * saturated.perPressure,
  };
}

function partialsOfSaturationPoint(pointCelsius: number, pressure: number, phase: WaterPhase): Partials {
  const saturated = saturatedVapour(pointCelsius, pressure, phase);
  return {
    vapourPressure: 1 / saturated.perCelsius,
    airCelsius: 0,
    pressure: -saturated.perPressure / saturated.perCelsius,
  };
}

export function partialsOfMixingRatio({ pressure, vapourPressure }: AirState): Partials {
  const divisor = (pressure - vapourPressure) ** 2;
  return {
    vapourPressure: (MOLAR_MASS_RATIO * pressure) / divisor,
    airCelsius: 0,
    pressure: (-MOLAR_MASS_RATIO * vapourPressure) / divisor,
  };
}

export function partialsOfSpecificEnthalpy(state: AirState): Partials {
  const ofMixingRatio = partialsOfMixingRatio(state);
  const enthalpyOfVapour = ENTHALPY_OF_VAPOUR_AT_ZERO + HEAT_OF_VAPOUR * state.airCelsius;
  return {
    vapourPressure: ofMixingRatio.vapourPressure * enthalpyOfVapour,
    airCelsius: HEAT_OF_DRY_AIR + mixingRatio(state) * HEAT_OF_VAPOUR,
    pressure: ofMixingRatio.pressure * enthalpyOfVapour,
  };
}
