/** The vapour pressure that a known humidity stands for: the inverses of the quantities in quantities.ts. */
import { GAS_CONSTANT_OF_WATER_VAPOUR, kelvinOf, MOLAR_MASS_RATIO } from '../constants.ts';
import { ENTHALPY_OF_VAPOUR_AT_ZERO, HEAT_OF_DRY_AIR, HEAT_OF_VAPOUR } from './moist-air.ts';
import { saturatedVapourPressure } from './saturated-vapour.ts';

/**
 * Vapour pressure in Pa from a relative humidity over water (fraction), at the temperature in °C that the sensor has
 * and a pressure in Pa: e = U·f·es (WMO-No. 8 ch. 4, over water also below 0 °C).
 * Worked value: 0.5 at 20 °C and 101325 Pa gives 1174.26 Pa.
 */
export function vapourPressureFromRelativeHumidity(
  relativeHumidity: number,
  celsius: number,
  pressure: number,
): number {
  return relativeHumidity * saturatedVapourPressure(celsius, pressure, 'water');
}

/**
 * Vapour pressure in Pa from a relative humidity over ice (fraction), up to 0.01 °C; otherwise as over water.
 * Worked value: 0.5 at −10 °C and 101325 Pa gives 130.46 Pa.
 */
export function vapourPressureFromRelativeHumidityOverIce(
  relativeHumidityOverIce: number,
  celsius: number,
  pressure: number,
): number {
  return relativeHumidityOverIce * saturatedVapourPressure(celsius, pressure, 'ice');
}

/**
 * Vapour pressure in Pa of air with a dew point in °C (over water, also below 0 °C) at a pressure in Pa: e = f·es.
 * Worked value: 20 °C at 101325 Pa gives 2348.53 Pa.
 */
export function vapourPressureFromDewPoint(dewPointCelsius: number, pressure: number): number {
  return saturatedVapourPressure(dewPointCelsius, pressure, 'water');
}

/**
 * Vapour pressure in Pa of air with a frost point in °C (over ice, up to 0.01 °C) at a pressure in Pa: e = f·ei.
 * Worked value: −10 °C at 101325 Pa gives 260.92 Pa.
 */
export function vapourPressureFromFrostPoint(frostPointCelsius: number, pressure: number): number {
  return saturatedVapourPressure(frostPointCelsius, pressure, 'ice');
}

/**
 * Vapour pressure in Pa from a mixing ratio in kg of vapour per kg of dry air at a pressure in Pa: e = p·W/(ε + W)
 * (ASHRAE Fundamentals 2017 ch. 1 eq. 20 solved for e, with the ratio of molar masses of CIPM-2007). Mixing ratios of 0
 * and more.
 * Worked value: 0.01 kg/kg at 101325 Pa gives 1603.35 Pa.
 */
export function vapourPressureFromMixingRatio(mixingRatio: number, pressure: number): number {
  return (pressure * mixingRatio) / (MOLAR_MASS_RATIO + mixingRatio);
}

/**
 * Vapour pressure in Pa from a specific humidity q in kg of vapour per kg of moist air (0 to 1) at a pressure in Pa:
 * e = p·q/(ε + (1 − ε)·q). Worked value: 0.01 kg/kg at 101325 Pa gives 1619.29 Pa.
 */
export function vapourPressureFromSpecificHumidity(specificHumidity: number, pressure: number): number {
  return (pressure * specificHumidity) / (MOLAR_MASS_RATIO + (1 - MOLAR_MASS_RATIO) * specificHumidity);
}

/**
 * Vapour pressure in Pa from a volume fraction, moles of vapour per mole of moist air, at a pressure in Pa.
 * Worked value: 0.01 at 101325 Pa gives 1013.25 Pa.
 */
export function vapourPressureFromVolumeFraction(volumeFraction: number, pressure: number): number {
  return volumeFraction * pressure;
}

/**
 * Vapour pressure in Pa from an absolute humidity in kg/m³ at a temperature in °C: e = ρv·Rv·T (compressibility 1).
 * Worked value: 0.01 kg/m³ at 20 °C gives 1352.95 Pa.
 */
export function vapourPressureFromAbsoluteHumidity(absoluteHumidity: number, celsius: number): number {
  return absoluteHumidity * GAS_CONSTANT_OF_WATER_VAPOUR * kelvinOf(celsius);
}

/**
 * Mixing ratio in kg/kg from a specific enthalpy in J per kg of dry air at a temperature in °C: ASHRAE Fundamentals
 * 2017 ch. 1 eq. 30 solved for W. Negative where the enthalpy is below that of dry air.
 * Worked value: 81316 J/kg at 30 °C gives 0.02 kg/kg.
 */
export function mixingRatioFromSpecificEnthalpy(specificEnthalpy: number, celsius: number): number {
  return (specificEnthalpy - HEAT_OF_DRY_AIR * celsius) / (ENTHALPY_OF_VAPOUR_AT_ZERO + HEAT_OF_VAPOUR * celsius);
}
