/** Reads `24 V`, `-40 degC`, `35 .. 88 %RH`, `1.2 bar(g)` with the exact place of every part inside the text. */
import { fail, type Outcome, succeed } from '../base/outcome.ts';
import { type TextRange, textRange } from '../base/text-range.ts';
import { DIMENSIONS, type Dimension, dimensionsOf, type Unit, unitOf } from './dimension.ts';
import { likelyUnits, resemblingUnits } from './likely-units.ts';
import { slipIn } from './number-slips.ts';
import type { Quantity, QuantityRange } from './quantity.ts';

export type ReadProblemKind =
  | 'no-number'
  | 'no-unit'
  | 'unknown-unit'
  | 'wrong-dimension'
  | 'mistyped'
  | 'not-finite'
  | 'below-least'
  | 'not-a-value'
  | 'reversed';

export interface ReadProblem {
  readonly kind: ReadProblemKind;
  /** One sentence without a final stop. */
  readonly sentence: string;
  /** Where in the text, in UTF-16 units. */
  readonly range: TextRange;
  /** Whole texts that would be read, most likely first. */
  readonly suggestions: readonly string[];
}

/** What is odd about a text that was read all the same. */
export interface ReadNotice {
  readonly kind: 'difference-in-degrees';
  readonly range: TextRange;
  readonly suggestion: string;
}

export interface ReadResult<Value> {
  readonly value: Value;
  readonly notice?: ReadNotice;
}

const NUMBER = String.raw`[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?`;
const FORM = new RegExp(String.raw`^(\s*)(${NUMBER})(?:(\s*\.\.\s*)(${NUMBER}))?(\s*)(.*?)\s*$`, 'd');
const GAUGE = /^(.*?)\s*\(g\)$/;
const LONGEST_TEXT = 200;
/** More choices than this help nobody. */
const MOST_SUGGESTIONS = 3;

/** One text taken apart, its numbers as typed. */
interface Parts {
  readonly lowText: string;
  readonly highText: string | undefined;
  /** The unit as typed, with `(g)`. */
  readonly rest: string;
  readonly low: number;
  readonly high: number;
  readonly numbers: TextRange;
  readonly unit: Unit;
  readonly gauge: boolean;
  readonly notice?: ReadNotice;
}

/**
 * Reads one value of a dimension.
 * @param text the scalar's content, without quotes
 * @param example a value as it usually is in this place, by which units are suggested
 */
export function readQuantity(
  text: string,
  dimension: Dimension,
  example?: string,
): Outcome<ReadResult<Quantity>, ReadProblem> {
  return readPlain(text, (plain) => readOne(plain, dimension, example));
}

/** Reads `LOW .. HIGH UNIT` of a dimension; a single value reads as a range of no width. */
export function readRange(
  text: string,
  dimension: Dimension,
  example?: string,
): Outcome<ReadResult<QuantityRange>, ReadProblem> {
  return readPlain(text, (plain) => readBoth(plain, dimension, example));
}

/** Reads a text; where that fails for one of the usual slips, says so and suggests the text without it. */
function readPlain<Value>(
  text: string,
  read: (text: string) => Outcome<Value, ReadProblem>,
): Outcome<Value, ReadProblem> {
  const outcome = read(text);
  if (outcome.ok || (outcome.problem.kind !== 'no-number' && outcome.problem.kind !== 'unknown-unit')) return outcome;
  const slip = text.length > LONGEST_TEXT ? undefined : slipIn(text);
  const suggestions = (slip?.mended ?? []).flatMap((mended) => {
    const again = read(mended);
    return again.ok ? [mended.trim()] : again.problem.suggestions;
  });
  if (slip === undefined || suggestions.length === 0) return outcome;
  return problem('mistyped', `${quote(text)} ${slip.words}`, textRange(0, text.length), suggestions);
}

function readOne(
  text: string,
  dimension: Dimension,
  example: string | undefined,
): Outcome<ReadResult<Quantity>, ReadProblem> {
  const parts = readParts(text, dimension, example);
  if (!parts.ok) return parts;
  const { low, lowText, highText, rest, unit, gauge, numbers, notice } = parts.value;
  if (highText !== undefined) {
    const sentence = 'One value is expected here, not a range';
    return problem('not-a-value', sentence, numbers, [`${lowText} ${rest}`, `${highText} ${rest}`]);
  }
  return succeed(withNotice({ dimension, value: low, unit, gauge }, notice));
}

function readBoth(
  text: string,
  dimension: Dimension,
  example: string | undefined,
): Outcome<ReadResult<QuantityRange>, ReadProblem> {
  const parts = readParts(text, dimension, example);
  if (!parts.ok) return parts;
  const { low, high, lowText, highText = lowText, rest, unit, gauge, numbers, notice } = parts.value;
  if (low > high) {
    const sentence = `The range runs from ${lowText} down to ${highText}`;
    return problem('reversed', sentence, numbers, [`${highText} .. ${lowText} ${rest}`]);
  }
  return succeed(withNotice({ dimension, low, high, unit, gauge }, notice));
}

function withNotice<Value>(value: Value, notice: ReadNotice | undefined): ReadResult<Value> {
  return notice === undefined ? { value } : { value, notice };
}

function canonical(number: number, unit: Unit): number {
  return number * unit.factor + unit.offset;
}

function readParts(text: string, dimension: Dimension, example: string | undefined): Outcome<Parts, ReadProblem> {
  const info = DIMENSIONS[dimension];
  const whole = textRange(0, text.length);
  const match = text.length <= LONGEST_TEXT ? FORM.exec(text) : null;
  if (match === null) {
    return problem('no-number', `${quote(text)} is not ${info.words}, such as ${quote(info.example)}`, whole, []);
  }
  const [, , lowText = '', , highText, , rest = ''] = match;
  const groupRange = (group: number): TextRange => {
    const [start, end] = match.indices?.[group] ?? [0, text.length];
    return textRange(start, end);
  };
  const numbers = textRange(groupRange(2).start, groupRange(highText === undefined ? 2 : 4).end);
  const [low, high] = [Number(lowText), Number(highText ?? lowText)];
  if (!Number.isFinite(low) || !Number.isFinite(high)) {
    return problem('not-finite', `The number ${quote(text)} is too large`, numbers, []);
  }
  const gauge = dimension === 'pressure' ? GAUGE.exec(rest) : null;
  const symbol = gauge === null ? rest : (gauge[1] ?? '');
  const written: Written = {
    numbers: highText === undefined ? lowText : `${lowText} .. ${highText}`,
    largest: Math.abs(low) > Math.abs(high) ? low : high,
    symbol,
    whole,
    range: textRange(groupRange(6).start, groupRange(6).start + symbol.length),
  };
  const found = findUnit(dimension, written, example);
  if (!found.ok) return found;
  const { unit, notice } = found.value;
  if (info.least !== undefined && gauge === null && canonical(Math.min(low, high), unit) < info.least) {
    return problem('below-least', `${quote(text)} is below the least value that ${info.words} can have`, numbers, []);
  }
  return succeed({
    ...{ lowText, highText, rest, numbers, unit, gauge: gauge !== null },
    low: canonical(low, unit),
    high: canonical(high, unit),
    ...(notice === undefined ? {} : { notice }),
  });
}

/** Numbers and the unit behind them, as typed. */
interface Written {
  readonly numbers: string;
  readonly largest: number;
  readonly symbol: string;
  readonly whole: TextRange;
  /** Where the symbol stands. */
  readonly range: TextRange;
}

function findUnit(
  dimension: Dimension,
  { numbers, largest, symbol, range, whole }: Written,
  example: string | undefined,
): Outcome<{ unit: Unit; notice?: ReadNotice }, ReadProblem> {
  const info = DIMENSIONS[dimension];
  const unit = unitOf(dimension, symbol);
  if (unit !== undefined) return succeed({ unit });
  const symbols = info.units.map((known) => known.symbol).join(', ');
  if (symbol === '') {
    const sentence = `${quote(numbers)} needs a unit: ${symbols}`;
    return problem('no-unit', sentence, whole, withLikelyUnits(numbers, largest, dimension, example));
  }
  if (dimension === 'temperature-difference' && (symbol === 'degC' || symbol === '°C')) {
    const kelvin = unitOf(dimension, 'K') as Unit;
    return succeed({ unit: kelvin, notice: { kind: 'difference-in-degrees', range, suggestion: `${numbers} K` } });
  }
  const near = resemblingUnits(symbol, dimension).map((known) => `${numbers} ${known}`);
  const [other] = dimensionsOf(symbol);
  if (other !== undefined) {
    const sentence = `${quote(`${numbers} ${symbol}`)} is ${DIMENSIONS[other].words}, and ${info.words} is expected here, such as ${quote(info.example)}`;
    return problem('wrong-dimension', sentence, range, near);
  }
  const sentence = `${quote(symbol)} is no unit of ${info.words}; it is written in ${symbols}`;
  const suggestions = near.length > 0 ? near : withLikelyUnits(numbers, largest, dimension, example);
  return problem('unknown-unit', sentence, range, suggestions);
}

function withLikelyUnits(
  numbers: string,
  largest: number,
  dimension: Dimension,
  example: string | undefined,
): readonly string[] {
  const { example: anyExample } = DIMENSIONS[dimension];
  const [own, usual] = [example ?? anyExample, anyExample].map((text) => {
    const [, , low = '', , high = low, , symbol = ''] = FORM.exec(text) ?? [];
    const unit = unitOf(dimension, symbol.replace(GAUGE, '$1'));
    return unit === undefined ? undefined : { unit, value: canonical(Number(high), unit) };
  });
  const compareWith = own ?? usual;
  if (compareWith === undefined) return [];
  const units = likelyUnits(largest, dimension, compareWith).slice(0, MOST_SUGGESTIONS);
  return units.map(({ symbol }) => `${numbers} ${symbol}`);
}

function quote(text: string): string {
  const shown = text.length > 60 ? `${text.slice(0, 57)}…` : text;
  return `“${shown}”`;
}

function problem(
  kind: ReadProblemKind,
  sentence: string,
  range: TextRange,
  suggestions: readonly string[],
): Outcome<never, ReadProblem> {
  return fail({ kind, sentence, range, suggestions });
}
