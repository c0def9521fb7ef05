/** Air pressure where only the altitude is known. */
import { STANDARD_GRAVITY, STANDARD_PRESSURE } from '../constants.ts';
import type { Formula } from '../formula.ts';

/** p = 101325 Pa·(1 − 0.0065 h/288.15)^5.25588, h in m */
export const STANDARD_ATMOSPHERE: Formula = {
  id: 'standard-atmosphere',
  title: 'Pressure of the standard atmosphere, ISO 2533',
  source: 'ISO 2533:1975, standard atmosphere up to 11 km',
  validity: [{ argument: 'altitude', low: -500, high: 11_000, unit: 'm' }],
};

/** ISO 2533: temperature at sea level in K, its fall in K/m, gas constant of air in J/(kg·K). */
const SEA_LEVEL_KELVIN = 288.15;
const LAPSE_RATE = 0.0065;
const GAS_CONSTANT = 287.05287;
const EXPONENT = STANDARD_GRAVITY / (GAS_CONSTANT * LAPSE_RATE);

/**
 * Pressure of the standard atmosphere in Pa at an altitude in m, −500 to 11000 m. ISO 2533 means geopotential
 * altitude, which differs from the height on a map by 0.03 % at 2 km. The weather moves the true pressure by up to
 * about 4 % (common knowledge, no source). The layer formula is continued outside its range, to 0 Pa at 44 km.
 * Worked value: 1000 m gives 89875 Pa.
 */
export function pressureAtAltitude(metres: number): number {
  return STANDARD_PRESSURE * Math.max(0, 1 - (LAPSE_RATE * metres) / SEA_LEVEL_KELVIN) ** EXPONENT;
}
