/** Which unit was probably meant where none, or none that is known, was written. */
import { DIMENSIONS, type Dimension, type Unit } from './dimension.ts';

/** A value of the usual kind and size, to compare with. */
export interface UsualValue {
  readonly unit: Unit;
  /** Canonical. */
  readonly value: number;
}

/**
 * The units of a dimension, likeliest first for a number without one: those that bring it nearest to the usual size,
 * in whole powers of ten; among them the usual unit.
 */
export function likelyUnits(number: number, dimension: Dimension, usual: UsualValue): readonly Unit[] {
  const { units, least = 0 } = DIMENSIONS[dimension];
  const decadesAway = ({ factor, offset }: Unit): number => {
    const ratio = Math.abs((number * factor + offset - least) / (usual.value - least));
    return ratio === 0 ? 0 : Math.round(Math.abs(Math.log10(ratio)));
  };
  const isOther = (unit: Unit): number => (unit.symbol === usual.unit.symbol ? 0 : 1);
  return units.toSorted((one, other) => decadesAway(one) - decadesAway(other) || isOther(one) - isOther(other));
}

/** The units of a dimension that a misspelt symbol resembles, as files spell them: `kPa` for `kpa`, `bar(g)` for `barg`. */
export function resemblingUnits(symbol: string, dimension: Dimension): readonly string[] {
  const { units } = DIMENSIONS[dimension];
  const typed = plain(symbol);
  if (typed === '') return [];
  const same = units.filter((unit) => namesOf(unit).includes(typed));
  if (same.length > 0) return same.map((unit) => unit.symbol);
  const gauge = dimension === 'pressure' ? units.filter((unit) => `${plain(unit.symbol)}g` === typed) : [];
  if (gauge.length > 0) return gauge.map((unit) => `${unit.symbol}(g)`);
  const longest = units.toSorted((one, other) => other.symbol.length - one.symbol.length);
  const begun = longest.find((unit) =>
    namesOf(unit).some((name) => name !== '' && (typed.startsWith(name) || (typed.length > 2 && name.startsWith(typed)))),
  );
  return begun === undefined ? [] : [begun.symbol];
}

function namesOf(unit: Unit): readonly string[] {
  const names = [unit.symbol, ...unit.aliases].map(plain);
  return [...names, ...names.map((name) => name.replace(/^deg/, ''))];
}

function plain(text: string): string {
  return text.toLowerCase().replace(/[^a-z0-9%]/g, '');
}
