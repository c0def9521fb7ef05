/**
 * Transport properties of dry air, for the heat that bodies exchange with it. They depend on pressure only through
 * the density; the few percent that vapour adds in hot wet air are left out.
 */
import { GAS_CONSTANT_OF_DRY_AIR, kelvinOf } from '../constants.ts';

/** Air at the film temperature (mean of surface and air) and at the process pressure. */
export interface AirProperties {
  /** W/(m·K) */
  readonly conductivity: number;
  /** m²/s */
  readonly kinematicViscosity: number;
  /** Dimensionless. */
  readonly prandtl: number;
  /** 1/K; the reciprocal of the absolute temperature for a gas that is nearly ideal. */
  readonly thermalExpansion: number;
  /** kg/m³ */
  readonly density: number;
  /** At constant pressure, J/(kg·K). */
  readonly specificHeat: number;
}

/**
 * The properties of dry air that convection needs, at a temperature in °C and a pressure in Pa. The standards state no
 * range: −56.5 °C is the coldest of the ISO 2533 troposphere, 176.85 °C how far the fits were compared with a table.
 * Within 1 % of Incropera table A.4 from 250 to 450 K, the Prandtl number within 1.5 %.
 * Worked value: 26.85 °C and 100 kPa give k = 0.02625 W/(m·K), ν = 15.9e-6 m²/s, Pr = 0.707.
 */
export function dryAirProperties(celsius: number, pressure: number): AirProperties {
  const conductivity = airConductivity(celsius);
  const viscosity = airViscosity(celsius);
  const specificHeat = airSpecificHeat(celsius);
  const density = dryAirDensity(celsius, pressure);
  return {
    conductivity,
    kinematicViscosity: viscosity / density,
    prandtl: (viscosity * specificHeat) / conductivity,
    thermalExpansion: thermalExpansion(celsius),
    density,
    specificHeat,
  };
}

/**
 * Thermal conductivity of air in W/(m·K) at a temperature in °C: 2.64638e-3·T^1.5/(T + 245.4·10^(−12/T)), T in K.
 * U.S. Standard Atmosphere 1976, eq. 53. 26.85 °C: 0.02625.
 */
function airConductivity(celsius: number): number {
  const kelvin = kelvinOf(celsius);
  return (2.64638e-3 * kelvin ** 1.5) / (kelvin + 245.4 * 10 ** (-12 / kelvin));
}

/**
 * Dynamic viscosity of air in Pa·s at a temperature in °C: Sutherland's 1.458e-6·T^1.5/(T + 110.4), T in K.
 * ISO 2533:1975; U.S. Standard Atmosphere 1976, eq. 51. 26.85 °C: 1.846e-5.
 */
function airViscosity(celsius: number): number {
  const kelvin = kelvinOf(celsius);
  return (1.458e-6 * kelvin ** 1.5) / (kelvin + 110.4);
}

/**
 * Isobaric specific heat of dry air in J/(kg·K) at a temperature in °C (−213.15 to 1726.85), ideal gas: Lemmon,
 * Jacobsen, Penoncello and Friend, J. Phys. Chem. Ref. Data 29 (2000) 331, table 12. It lies 0.2 % below real air at
 * 1 atm and room temperature. 26.85 °C: 1004.8.
 */
function airSpecificHeat(celsius: number): number {
  const kelvin = kelvinOf(celsius);
  const polynomial = 3.490888032 + kelvin * (2.395525583e-6 + kelvin * (7.172111248e-9 - kelvin * 3.115413101e-13));
  const vibrations = 0.791309509 * vibration(3364.011 / kelvin) + 0.212236768 * vibration(2242.45 / kelvin);
  return GAS_CONSTANT_OF_DRY_AIR * (polynomial + 0.223806688 * kelvin ** -1.5 + vibrations);
}

/** Density of dry air in kg/m³ at a temperature in °C and a pressure in Pa, ideal gas. 20 °C, 101325 Pa: 1.204. */
function dryAirDensity(celsius: number, pressure: number): number {
  return pressure / (GAS_CONSTANT_OF_DRY_AIR * kelvinOf(celsius));
}

/** Volumetric thermal expansion of an ideal gas in 1/K at a temperature in °C: 1/T. 20 °C: 0.003411. */
function thermalExpansion(celsius: number): number {
  return 1 / kelvinOf(celsius);
}

/** Heat of a harmonic oscillator, in units of R, at a reduced inverse temperature: Einstein's function. */
function vibration(inverseTemperature: number): number {
  const exponential = Math.exp(-inverseTemperature);
  return (inverseTemperature ** 2 * exponential) / (1 - exponential) ** 2;
}
