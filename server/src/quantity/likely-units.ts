/** Which unit was probably meant where none, or none that is known, was written. */
import { canonical, DIMENSIONS, type Dimension, type Unit, unitOf } from './dimension.ts';
import { takeApart } from './value-form.ts';

/** More choices than this help nobody. */
const MOST_UNITS = 3;

/**
 * The units that a number without one was probably meant in, likeliest first: those that bring it nearest to the size
 * of the example, in whole powers of ten; among them the unit of the example.
 *
 * @param example a value as it usually is in this place; where it is of another dimension, the dimension's own counts
 */
export function likelyUnits(number: number, dimension: Dimension, example: string | undefined): readonly Unit[] {
  const { units, least = 0, example: ownExample } = DIMENSIONS[dimension];
  const usual = usualValue(example ?? ownExample, dimension) ?? usualValue(ownExample, dimension);
  if (usual === undefined) return units.slice(0, MOST_UNITS);
  const decadesAway = (unit: Unit): number => {
    const ratio = Math.abs((canonical(number, unit) - least) / (usual.value - least));
    return ratio === 0 ? 0 : Math.round(Math.abs(Math.log10(ratio)));
  };
  const isOther = (unit: Unit): number => (unit === usual.unit ? 0 : 1);
  const sorted = units.toSorted((one, other) => decadesAway(one) - decadesAway(other) || isOther(one) - isOther(other));
  return sorted.slice(0, MOST_UNITS);
}

/** The units that a misspelt symbol resembles, as files spell them: `kPa` for `kpa`, `bar(g)` for `barg`. */
export function resemblingUnits(symbol: string, dimension: Dimension): readonly string[] {
  const { units } = DIMENSIONS[dimension];
  const typed = plain(symbol);
  if (typed === '') return [];
  const same = units.filter((unit) => namesOf(unit).includes(typed));
  if (same.length > 0) return same.map((unit) => unit.symbol);
  const gauge = dimension === 'pressure' ? units.filter((unit) => `${plain(unit.symbol)}g` === typed) : [];
  if (gauge.length > 0) return gauge.map((unit) => `${unit.symbol}(g)`);
  const begins = (name: string): boolean =>
    name !== '' && (typed.startsWith(name) || (typed.length > 2 && name.startsWith(typed)));
  const longestFirst = units.toSorted((one, other) => other.symbol.length - one.symbol.length);
  return longestFirst
    .filter((unit) => namesOf(unit).some(begins))
    .map((unit) => unit.symbol)
    .slice(0, 1);
}

function usualValue(
  example: string,
  dimension: Dimension,
): { readonly unit: Unit; readonly value: number } | undefined {
  const form = takeApart(example);
  const unit = form === undefined ? undefined : unitOf(dimension, form.symbol);
  return form === undefined || unit === undefined ? undefined : { unit, value: canonical(form.high, unit) };
}

function namesOf(unit: Unit): readonly string[] {
  const names = [unit.symbol, ...unit.aliases].map(plain);
  return [...names, ...names.map((name) => name.replace(/^deg/, ''))];
}

function plain(text: string): string {
  return text.toLowerCase().replace(/[^a-z0-9%]/g, '');
}
