/** Flexible copper conductors (IEC 60228 class 5), which instrument cables mostly have: sizes sold, and resistance. */
import type { Formula } from '../formula.ts';

export interface Conductor {
  /** m² */
  readonly crossSection: number;
  /** Largest resistance at 20 °C of one plain copper conductor, ohm/m. */
  readonly resistancePerMetre: number;
  readonly source: string;
}

const IEC_60228 = 'IEC 60228, plain copper';
const BELOW_IEC_60228 = 'DIN VDE 0295/0812 type table; IEC 60228 starts at 0.5 mm²';
const UNLISTED = 'no listed size: 19.95 ohm·mm²/km over the cross-section, which no listed class 5 size exceeds';

/** Ω·m: 13.3 ohm/km times 1.5 mm², the largest of the listed class 5 sizes. */
const HIGHEST_LISTED_RESISTIVITY = 19.95e-9;

/** R = R(20 °C) (234.5 + t) / 254.5 */
export const CONDUCTOR_RESISTANCE: Formula = {
  id: 'conductor-resistance',
  title: 'Resistance of a copper conductor, IEC 60228, at its temperature',
  source: 'IEC 60228 table 3; temperature coefficient of annealed copper, 0.00393 /K at 20 °C, IEC 60028',
  validity: [{ argument: 'celsius', low: -50, high: 200, unit: 'degC' }],
};

/** The sizes that a person can buy, smallest first: mm² and the largest ohm/km at 20 °C of IEC 60228 table 3, plain wires. */
export const CONDUCTORS_SOLD: readonly Conductor[] = [
  conductor(0.14, 138, BELOW_IEC_60228),
  conductor(0.25, 79, BELOW_IEC_60228),
  conductor(0.34, 56, BELOW_IEC_60228),
  conductor(0.5, 39.0, IEC_60228),
  conductor(0.75, 26.0, IEC_60228),
  conductor(1, 19.5, IEC_60228),
  conductor(1.5, 13.3, IEC_60228),
  conductor(2.5, 7.98, IEC_60228),
  conductor(4, 4.95, IEC_60228),
  conductor(6, 3.3, IEC_60228),
];

/**
 * The conductor of a cross-section: the listed one within 1 % of it, else one with a cautious resistance.
 *
 * Worked value (IEC 60228 table 3): 0.5 mm², class 5, gives 39.0 ohm/km.
 *
 * @param crossSection m², above 0
 */
export function conductorOf(crossSection: number): Conductor {
  const isThis = (listed: Conductor): boolean => Math.abs(listed.crossSection / crossSection - 1) < 0.01;
  const cautious = HIGHEST_LISTED_RESISTIVITY / crossSection;
  return CONDUCTORS_SOLD.find(isThis) ?? { crossSection, resistancePerMetre: cautious, source: UNLISTED };
}

/**
 * Resistance of one conductor, ohm.
 *
 * R = R(20 °C) · (234.5 + t)/254.5. The standard's own factors (0.758 for 100 °C back to 20 °C) use a rounded
 * coefficient and differ by up to 0.5 % from this, which is the physics of annealed copper.
 *
 * Worked value (computed): 60 m of 0.5 mm² class 5 at 50 °C gives 2.616 ohm.
 *
 * @param length of the conductor, one way, m
 * @param celsius temperature of the conductor, °C, above −234.5
 */
export function conductorResistance(conductorUsed: Conductor, length: number, celsius: number): number {
  return (conductorUsed.resistancePerMetre * length * (234.5 + celsius)) / 254.5;
}

function conductor(squareMillimetres: number, ohmPerKilometre: number, source: string): Conductor {
  return { crossSection: squareMillimetres * 1e-6, resistancePerMetre: ohmPerKilometre / 1000, source };
}
