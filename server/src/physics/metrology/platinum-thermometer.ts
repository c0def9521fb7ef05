/** Industrial platinum resistance thermometers of IEC 60751. */

/** Tolerance classes of IEC 60751:2008, those that a kit file may name. */
export type PlatinumClass = 'AA' | 'A' | 'B';

/** Constant part in K and part per °C of the tolerance of each class: IEC 60751:2008. */
const TOLERANCES: Readonly<Record<PlatinumClass, readonly [constant: number, perCelsius: number]>> = {
  AA: [0.1, 0.0017],
  A: [0.15, 0.002],
  B: [0.3, 0.005],
};

/**
 * Tolerance of a class in K, to either side, at a temperature in °C: a constant and a part of |t|, IEC 60751:2008. It
 * holds within limits of the temperature that depend on the class and on how the platinum is made.
 * Worked value: class A at 100 °C is 0.35 K.
 */
export function platinumTolerance(tolerance: PlatinumClass, celsius: number): number {
  const [constant, perCelsius] = TOLERANCES[tolerance];
  return constant + perCelsius * Math.abs(celsius);
}
