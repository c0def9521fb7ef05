/** Radiation between a small body in air and the walls around it. */
import { kelvinOf } from '../constants.ts';

/** W/(m²·K⁴), exact in the SI of 2019. */
const STEFAN_BOLTZMANN = 5.670374419e-8;

/** Cleaned stainless steel near 300 K; common handbook value (Incropera, table A.11), from memory. */
export const CLEANED_STEEL_EMISSIVITY = 0.22;

/**
 * Heat transfer coefficient of radiation between a small grey body and large surroundings, W/(m²·K).
 *
 * h = 4 ε σ T³, T the mean of the two temperatures: linearised, within 1 % while they lie less than 50 K apart.
 *
 * Worked value (computed): emissivity 0.22 at 60 °C gives 1.85 W/(m²·K).
 *
 * @param emissivity of the body, 0 to 1
 * @param meanCelsius mean temperature of body and walls, °C
 */
export function radiativeCoefficient(emissivity: number, meanCelsius: number): number {
  return 4 * emissivity * STEFAN_BOLTZMANN * kelvinOf(meanCelsius) ** 3;
}

/**
 * How far a thermometer reads below the air because it also sees a cooler wall, K; negative before a warmer wall.
 *
 * h(rad) (T(air) − T(wall)) / (h(rad) + h(air)): heat balance of a small grey body in a large enclosure, Incropera,
 * section 1.2.3. An estimate: it takes all that the probe sees to be at the wall's temperature.
 *
 * Worked value (computed): air 60 °C, wall 55 °C, emissivity 0.22, 60 W/(m²·K) gives 0.15 K.
 *
 * @param airCelsius air temperature, °C
 * @param wallCelsius temperature of the inner wall surface, °C
 * @param emissivity of the probe, 0 to 1
 * @param filmCoefficient of the air on the probe, W/(m²·K), above 0
 */
export function radiationError(
  airCelsius: number,
  wallCelsius: number,
  emissivity: number,
  filmCoefficient: number,
): number {
  const radiative = radiativeCoefficient(emissivity, (airCelsius + wallCelsius) / 2);
  return (radiative * (airCelsius - wallCelsius)) / (radiative + filmCoefficient);
}
