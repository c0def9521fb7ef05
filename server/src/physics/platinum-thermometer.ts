/** Industrial platinum resistance thermometers of IEC 60751. */
import { fail, type Outcome, succeed } from '../base/outcome.ts';
import { checkValidity, type Formula, type OutsideFormula } from './formula.ts';
import { risingRoot } from './newton.ts';

/** Tolerance classes of IEC 60751:2008. */
export type PlatinumClass = 'AA' | 'A' | 'B' | 'C';

/** How the platinum is made, on which the temperature limits of a class depend. */
export type PlatinumElement = 'wire-wound' | 'film';

export const PLATINUM_RESISTANCE: Formula = {
  id: 'platinum-resistance',
  title: 'Resistance of a Pt100, IEC 60751',
  equation: 'R = 100 ohm·[1 + A t + B t² + C (t − 100) t³], C = 0 above 0 degC',
  source: 'IEC 60751:2008, Callendar–Van Dusen equation',
  validity: [
    { argument: 'celsius', low: -200, high: 850, unit: 'degC' },
    { argument: 'resistance', low: 18.52, high: 390.482, unit: 'ohm' },
  ],
};

export const PLATINUM_TOLERANCE: Formula = {
  id: 'platinum-tolerance',
  title: 'Tolerance of a platinum thermometer, IEC 60751',
  equation: 'AA: 0.1 + 0.0017 |t|; A: 0.15 + 0.002 |t|; B: 0.3 + 0.005 |t|; C: 0.6 + 0.01 |t|; K, t in degC',
  source: 'IEC 60751:2008, tolerance classes',
  validity: [],
};

const RESISTANCE_AT_ZERO = 100;
const A = 3.9083e-3;
const B = -5.775e-7;
const C = -4.183e-12;

/**
 * Resistance of a Pt100 in Ω at a temperature in °C, −200 to 850: IEC 60751:2008.
 * Worked value: 100 °C gives 138.5055 Ω.
 */
export function platinumResistance(celsius: number): number {
  const belowZero = celsius < 0 ? C * (celsius - 100) * celsius ** 3 : 0;
  return RESISTANCE_AT_ZERO * (1 + A * celsius + B * celsius ** 2 + belowZero);
}

/** Change of a Pt100's resistance in Ω/K at a temperature in °C: the exact derivative. 0 °C gives 0.39083 Ω/K. */
export function platinumSensitivity(celsius: number): number {
  const belowZero = celsius < 0 ? C * (4 * celsius ** 3 - 300 * celsius ** 2) : 0;
  return RESISTANCE_AT_ZERO * (A + 2 * B * celsius + belowZero);
}

/**
 * Temperature in °C of a Pt100 of a resistance in Ω: {@link platinumResistance} solved to 1e-9 K, −200 to 850 °C.
 * Worked value: 138.5055 Ω gives 100 °C.
 */
export function platinumTemperature(resistance: number): Outcome<number, OutsideFormula> {
  const outside = checkValidity(PLATINUM_RESISTANCE, { resistance });
  if (outside !== undefined) return fail(outside);
  const linear = (resistance / RESISTANCE_AT_ZERO - 1) / A;
  const tangentAt = (celsius: number) => ({
    value: platinumResistance(celsius) - resistance,
    slope: platinumSensitivity(celsius),
  });
  return succeed(risingRoot(tangentAt, LOWEST_SEARCHED, HIGHEST_SEARCHED, linear, 1e-6));
}

/** A little beyond the range, since the limits of the resistance are rounded outwards. */
const LOWEST_SEARCHED = -201;
const HIGHEST_SEARCHED = 851;

/** Constant part in K and part per °C of the tolerance of each class: IEC 60751:2008. */
const TOLERANCES: Readonly<Record<PlatinumClass, readonly [constant: number, perCelsius: number]>> = {
  AA: [0.1, 0.0017],
  A: [0.15, 0.002],
  B: [0.3, 0.005],
  C: [0.6, 0.01],
};

/**
 * Tolerance of a class in K, to either side, at a temperature in °C: IEC 60751:2008. It holds within the limits that
 * {@link platinumClassLimits} gives. Worked value: class A at 100 °C is 0.35 K.
 */
export function platinumTolerance(tolerance: PlatinumClass, celsius: number): number {
  const [constant, perCelsius] = TOLERANCES[tolerance];
  return constant + perCelsius * Math.abs(celsius);
}

/** Between these temperatures in °C the tolerance of a class holds. */
export interface ClassLimits {
  readonly lowestCelsius: number;
  readonly highestCelsius: number;
}

/** From memory, unverified against IEC 60751:2008. */
const CLASS_LIMITS: Readonly<Record<PlatinumElement, Readonly<Record<PlatinumClass, ClassLimits>>>> = {
  'wire-wound': {
    AA: { lowestCelsius: -50, highestCelsius: 250 },
    A: { lowestCelsius: -100, highestCelsius: 450 },
    B: { lowestCelsius: -196, highestCelsius: 600 },
    C: { lowestCelsius: -196, highestCelsius: 600 },
  },
  film: {
    AA: { lowestCelsius: 0, highestCelsius: 150 },
    A: { lowestCelsius: -30, highestCelsius: 300 },
    B: { lowestCelsius: -50, highestCelsius: 500 },
    C: { lowestCelsius: -50, highestCelsius: 600 },
  },
};

/** The temperature limits of a class, by the kind of element: IEC 60751:2008, from memory and unverified. */
export function platinumClassLimits(tolerance: PlatinumClass, element: PlatinumElement): ClassLimits {
  return CLASS_LIMITS[element][tolerance];
}
