/** Physical constants of moist air, each with its source. */

/** Kelvin temperature of 0 °C: exact, by definition of the Celsius scale. */
const ZERO_CELSIUS_IN_KELVIN = 273.15;

/** Molar gas constant in J/(mol·K): exact in the SI of 2019 (CODATA 2018), rounded to ten digits. */
const MOLAR_GAS_CONSTANT = 8.314462618;

/** Molar mass of water in kg/mol: CIPM-2007, Picard et al., Metrologia 45 (2008) 149. */
const MOLAR_MASS_OF_WATER = 18.01528e-3;

/** Molar mass of dry air with 400 µmol/mol of carbon dioxide in kg/mol: CIPM-2007, the same paper. */
const MOLAR_MASS_OF_DRY_AIR = 28.96546e-3;

/** Mass of a mole of water over that of a mole of dry air, 0.621957 (the ASHRAE handbook rounds to 0.621945). */
export const MOLAR_MASS_RATIO = MOLAR_MASS_OF_WATER / MOLAR_MASS_OF_DRY_AIR;

/** Gas constant of dry air in J/(kg·K). */
export const GAS_CONSTANT_OF_DRY_AIR = MOLAR_GAS_CONSTANT / MOLAR_MASS_OF_DRY_AIR;

/** Gas constant of water vapour in J/(kg·K). */
export const GAS_CONSTANT_OF_WATER_VAPOUR = MOLAR_GAS_CONSTANT / MOLAR_MASS_OF_WATER;

/** Triple point of water in °C: exact on the ITS-90. */
export const TRIPLE_POINT_CELSIUS = 0.01;

/** Vapour pressure at the triple point of water in Pa: IAPWS SR1-86(1992) and R14-08(2011). */
export const TRIPLE_POINT_PRESSURE = 611.657;

/** Standard atmosphere in Pa: exact, ISO 2533. */
export const STANDARD_PRESSURE = 101_325;

/** Standard gravity in m/s²: exact, CGPM 1901 and ISO 2533. */
export const STANDARD_GRAVITY = 9.80665;

/** Thermodynamic temperature in K of a temperature in °C. Worked value: 26.85 °C is 300 K. */
export function kelvinOf(celsius: number): number {
  return celsius + ZERO_CELSIUS_IN_KELVIN;
}
