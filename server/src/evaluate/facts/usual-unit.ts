/** Values in the unit that they are usually written in, for rounding to what a person would choose. */
import { DIMENSIONS, type Dimension, type Unit } from '../../quantity/dimension.ts';

/** @param value canonical */
export function inUsualUnit(value: number, dimension: Dimension): number {
  const { offset, factor } = usualUnit(dimension);
  return (value - offset) / factor;
}

/** @returns the canonical value */
export function fromUsualUnit(number: number, dimension: Dimension): number {
  const { offset, factor } = usualUnit(dimension);
  return number * factor + offset;
}

const CANONICAL: Pick<Unit, 'factor' | 'offset'> = { factor: 1, offset: 0 };

function usualUnit(dimension: Dimension): Pick<Unit, 'factor' | 'offset'> {
  return DIMENSIONS[dimension].units[0] ?? CANONICAL;
}
