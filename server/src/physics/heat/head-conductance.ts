/** How much heat a probe's heated head gives to the air, its surroundings and its stem, per kelvin above the air. */
import type { AirProperties } from '../air/air-properties.ts';
import type { Formula } from '../formula.ts';
import {
  crossFlowCylinderNusselt,
  grashofNumber,
  horizontalCylinderNusselt,
  reynoldsNumber,
  verticalCylinderNusselt,
} from './heat-transfer.ts';
import { radiativeCoefficient } from './radiation.ts';
import { type Stem, stemConductance } from './stem-conduction.ts';

export type CylinderAxis = 'horizontal' | 'vertical';

/** A cylinder in air, such as a probe's head or stem. */
export interface AirCylinder {
  /** m */
  readonly diameter: number;
  /** m */
  readonly length: number;
  readonly axis: CylinderAxis;
}

export interface HeatedHead extends AirCylinder {
  /** 0 to 1 */
  readonly emissivity: number;
  readonly stem: Stem;
  /** Length of the stem between head and wall, m. */
  readonly stemLength: number;
}

/** W/K, above the air temperature. */
export interface HeadConductance {
  readonly convection: number;
  readonly radiation: number;
  readonly stem: number;
  readonly total: number;
}

/**
 * Driving difference, K, below which still air is not taken to be any stiller: draughts exceed what is left.
 * It also keeps the correlation for vertical cylinders away from its limit at no difference.
 */
const LEAST_DRIVING_DIFFERENCE = 0.1;

/** G = (h + 4 ε σ T³) (π D L + π D²/4) + (h P k A)^1/2 coth(m L(stem)), h³ = h(forced)³ + h(natural)³ */
export const HEAD_CONDUCTANCE: Formula = {
  id: 'head-conductance',
  title: 'Thermal conductance of a heated head: forced and natural convection, radiation and its stem',
  source:
    'Incropera, section 9.9 (combined convection, exponent 3, after Churchill 1977); Churchill and Bernstein 1977; Churchill and Chu 1975; Popiel 2007',
  validity: [{ argument: 'reynolds-times-prandtl', low: 0.2, high: 1e7, unit: '' }],
};

/**
 * Heat transfer coefficient of air on a cylinder across the flow, W/(m²·K), forced and natural together.
 *
 * h³ = h(forced)³ + h(natural)³, the published way to combine the two where they help each other or cross
 * (Incropera, section 9.9, after Churchill 1977). Within about 20 %, as the correlations under it.
 *
 * Worked value (Incropera, example 7.4): 12.7 mm at 10 m/s, ν 20.92e-6, k 0.030, Pr 0.70 gives 96 W/(m²·K).
 *
 * @param speed of the air, m/s, 0 or more
 * @param temperatureDifference between cylinder and air, K
 * @param air at the film temperature
 */
export function filmCoefficient(
  cylinder: AirCylinder,
  speed: number,
  temperatureDifference: number,
  air: AirProperties,
): number {
  const nusselt = crossFlowCylinderNusselt(reynoldsNumber(speed, cylinder.diameter, air), air.prandtl);
  const forced = (nusselt * air.conductivity) / cylinder.diameter;
  return Math.cbrt(forced ** 3 + naturalFilmCoefficient(cylinder, temperatureDifference, air) ** 3);
}

/**
 * Conductance of a heated head to the air, W/K, and its parts.
 *
 * See `HEAD_CONDUCTANCE`. Side and free end of the head count, with the same coefficient. The surroundings that the
 * head sees and the far end of its stem are taken to be at air temperature, and leads inside the stem are left out.
 * Within about 25 %: a filter or cage over the sensor is not modelled.
 *
 * Worked value (computed): 12 × 60 mm head on a 12 × 1 mm steel stem at 2 m/s in air of 60 °C: 0.14 W/K.
 *
 * @param speed of the air, m/s, 0 or more
 * @param rise of the head above the air, K
 * @param airCelsius air temperature, °C
 * @param air at the film temperature
 */
export function headConductance(
  head: HeatedHead,
  speed: number,
  rise: number,
  airCelsius: number,
  air: AirProperties,
): HeadConductance {
  const area = Math.PI * head.diameter * (head.length + head.diameter / 4);
  const coefficient = filmCoefficient(head, speed, rise, air);
  const length = Math.max(head.stemLength, head.stem.diameter); // as stemConductance takes it
  const stemCylinder = { diameter: head.stem.diameter, length, axis: head.axis };
  // The stem cools along its length: half the head's rise is what drives natural convection on it, on the mean.
  const stemCoefficient = filmCoefficient(stemCylinder, speed, rise / 2, air);
  const convection = coefficient * area;
  const radiation = radiativeCoefficient(head.emissivity, airCelsius + rise / 2) * area;
  const stem = stemConductance(head.stem, head.stemLength, stemCoefficient);
  return { convection, radiation, stem, total: convection + radiation + stem };
}

function naturalFilmCoefficient(cylinder: AirCylinder, temperatureDifference: number, air: AirProperties): number {
  const difference = Math.max(Math.abs(temperatureDifference), LEAST_DRIVING_DIFFERENCE);
  const { diameter, length } = cylinder;
  if (cylinder.axis === 'horizontal') {
    const rayleigh = grashofNumber(diameter, difference, air) * air.prandtl;
    return (horizontalCylinderNusselt(rayleigh, air.prandtl) * air.conductivity) / diameter;
  }
  const grashof = grashofNumber(length, difference, air);
  return (verticalCylinderNusselt(grashof, air.prandtl, length / diameter) * air.conductivity) / length;
}
