/** Exact partial derivatives of every quantity of a state of air, for uncertainty budgets (JCGM 100:2008, 5.1.3). */
import { type Outcome, succeed } from '../../base/outcome.ts';
import type { NoSuchPoint } from '../air/dew-point.ts';
import { type AirState, ENTHALPY_OF_VAPOUR_AT_ZERO, HEAT_OF_DRY_AIR, HEAT_OF_VAPOUR } from '../air/moist-air.ts';
import { density, dewPoint, dewPointAt, frostPoint, mixingRatio, relativeHumidityOverIce } from '../air/quantities.ts';
import type { NoSuchQuantity, StateQuantity } from '../air/quantity-of-state.ts';
import { saturatedVapour } from '../air/saturated-vapour.ts';
import type { WaterPhase } from '../air/saturation.ts';
import { wetBulb, wetBulbPartials } from '../air/wet-bulb.ts';
import { GAS_CONSTANT_OF_DRY_AIR, GAS_CONSTANT_OF_WATER_VAPOUR, kelvinOf, MOLAR_MASS_RATIO } from '../constants.ts';

/**
 * Change of a quantity, in its SI unit, per Pa of vapour pressure, per K of air temperature and per Pa of total
 * pressure, each with the other two held.
 */
export interface Partials {
  readonly vapourPressure: number;
  readonly airCelsius: number;
  readonly pressure: number;
}

/**
 * Exact partial derivatives of a quantity at a state of air: the functions of quantities.ts differentiated in closed
 * form, those of dew point, frost point and wet bulb by the implicit-function theorem, the enhancement factor included.
 * Worked value: dew point at 20 °C, 101325 Pa and 2348.5 Pa changes by 0.00687 K per Pa of vapour pressure.
 */
export function partialsOf(state: AirState, quantity: StateQuantity): Outcome<Partials, NoSuchQuantity> {
  const { airCelsius, pressure, vapourPressure } = state;
  switch (quantity) {
    case 'vapour-pressure':
      return succeed({ vapourPressure: 1, airCelsius: 0, pressure: 0 });
    case 'air-temperature':
      return succeed({ vapourPressure: 0, airCelsius: 1, pressure: 0 });
    case 'relative-humidity':
      return succeed(partialsOfRelativeHumidity(state, 'water'));
    case 'relative-humidity-ice': {
      const defined = relativeHumidityOverIce(state);
      return defined.ok ? succeed(partialsOfRelativeHumidity(state, 'ice')) : defined;
    }
    case 'dew-point': {
      const point = dewPoint(state);
      return point.ok ? succeed(partialsOfSaturationPoint(point.value, pressure, 'water')) : point;
    }
    case 'frost-point': {
      const point = frostPoint(state);
      return point.ok ? succeed(partialsOfSaturationPoint(point.value, pressure, 'ice')) : point;
    }
    case 'dew-point-depression': {
      const point = dewPoint(state);
      if (!point.ok) return point;
      const ofPoint = partialsOfSaturationPoint(point.value, pressure, 'water');
      return succeed({ vapourPressure: -ofPoint.vapourPressure, airCelsius: 1, pressure: -ofPoint.pressure });
    }
    case 'vapour-pressure-deficit': {
      const saturated = saturatedVapour(airCelsius, pressure, 'water');
      return succeed({ vapourPressure: -1, airCelsius: saturated.perCelsius, pressure: saturated.perPressure });
    }
    case 'mixing-ratio':
      return succeed(partialsOfMixingRatio(state));
    case 'specific-humidity': {
      const divisor = (pressure - (1 - MOLAR_MASS_RATIO) * vapourPressure) ** 2;
      return succeed({
        vapourPressure: (MOLAR_MASS_RATIO * pressure) / divisor,
        airCelsius: 0,
        pressure: (-MOLAR_MASS_RATIO * vapourPressure) / divisor,
      });
    }
    case 'volume-fraction':
      return succeed({ vapourPressure: 1 / pressure, airCelsius: 0, pressure: -vapourPressure / pressure ** 2 });
    case 'absolute-humidity': {
      const kelvin = kelvinOf(airCelsius);
      return succeed({
        vapourPressure: 1 / (GAS_CONSTANT_OF_WATER_VAPOUR * kelvin),
        airCelsius: -vapourPressure / (GAS_CONSTANT_OF_WATER_VAPOUR * kelvin ** 2),
        pressure: 0,
      });
    }
    case 'specific-enthalpy':
      return succeed(partialsOfSpecificEnthalpy(state));
    case 'wet-bulb':
      return succeed(wetBulbPartials(state, wetBulb(state)));
    case 'density': {
      const kelvin = kelvinOf(airCelsius);
      return succeed({
        vapourPressure: (1 / GAS_CONSTANT_OF_WATER_VAPOUR - 1 / GAS_CONSTANT_OF_DRY_AIR) / kelvin,
        airCelsius: -density(state) / kelvin,
        pressure: 1 / (GAS_CONSTANT_OF_DRY_AIR * kelvin),
      });
    }
  }
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

function partialsOfRelativeHumidity({ airCelsius, pressure, vapourPressure }: AirState, phase: WaterPhase): Partials {
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

function partialsOfMixingRatio({ pressure, vapourPressure }: AirState): Partials {
  const divisor = (pressure - vapourPressure) ** 2;
  return {
    vapourPressure: (MOLAR_MASS_RATIO * pressure) / divisor,
    airCelsius: 0,
    pressure: (-MOLAR_MASS_RATIO * vapourPressure) / divisor,
  };
}

function partialsOfSpecificEnthalpy(state: AirState): Partials {
  const ofMixingRatio = partialsOfMixingRatio(state);
  const enthalpyOfVapour = ENTHALPY_OF_VAPOUR_AT_ZERO + HEAT_OF_VAPOUR * state.airCelsius;
  return {
    vapourPressure: ofMixingRatio.vapourPressure * enthalpyOfVapour,
    airCelsius: HEAT_OF_DRY_AIR + mixingRatio(state) * HEAT_OF_VAPOUR,
    pressure: ofMixingRatio.pressure * enthalpyOfVapour,
  };
}
