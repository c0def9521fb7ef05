/** Turns of phrase that messages of several rules share. */
import { type KnownFact, showCorner } from '../../evaluate/facts/fact.ts';

/** ` at 75 °C and 98 %RH, phase conditioning`, or nothing for a fact without a corner. */
export function atCorner({ at }: KnownFact): string {
  return at === undefined ? '' : ` at ${showCorner(at)}`;
}

/** The same in brackets, where ` at` would read wrongly: ` (corner: 75 °C and 98 %RH, phase conditioning)`. */
export function inCorner({ at }: KnownFact): string {
  return at === undefined ? '' : ` (corner: ${showCorner(at)})`;
}
