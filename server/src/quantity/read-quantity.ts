/** Reads `24 V`, `-40 degC`, `35 .. 88 %RH`, `1.2 bar(g)` with the exact place of every part inside the text. */
import { fail, type Outcome, succeed } from '../base/outcome.ts';
import { type TextRange, textRange } from '../base/text-range.ts';
import { DIMENSIONS, type Dimension, dimensionsOf, type Unit, unitOf } from './dimension.ts';
import type { Quantity, QuantityRange } from './quantity.ts';

export type ReadProblemKind =
  | 'no-number'
  | 'no-unit'
  | 'unknown-unit'
  | 'wrong-dimension'
  | 'decimal-comma'
  | 'not-finite'
  | 'below-least'
  | 'not-a-range'
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
const DECIMAL_COMMA = /(\d),(\d)/;
const EVERY_DECIMAL_COMMA = /(\d),(\d)/g;
const GAUGE = /^(.*?)\s*\(g\)$/;
const LONGEST_TEXT = 200;

interface Parts {
  readonly low: number;
  readonly high: number | undefined;
  readonly numbers: TextRange;
  readonly symbol: string;
  readonly symbolRange: TextRange;
  readonly unit: Unit;
  readonly gauge: boolean;
  readonly notice?: ReadNotice;
}

/**
 * Reads one value of a dimension.
 * @param text the scalar's content, without quotes
 */
export function readQuantity(text: string, dimension: Dimension): Outcome<ReadResult<Quantity>, ReadProblem> {
  const parts = readParts(text, dimension);
  if (!parts.ok) return parts;
  const { low, high, unit, gauge, numbers, notice } = parts.value;
  if (high !== undefined) {
    const sentence = `One value is expected here, not a range`;
    return problem('not-a-value', sentence, numbers, [`${low} ${unit.symbol}`, `${high} ${unit.symbol}`]);
  }
  return succeed(withNotice({ dimension, value: canonical(low, unit), unit, gauge }, notice));
}

/** Reads `LOW .. HIGH UNIT` of a dimension; a single value reads as a range of no width. */
export function readRange(text: string, dimension: Dimension): Outcome<ReadResult<QuantityRange>, ReadProblem> {
  const parts = readParts(text, dimension);
  if (!parts.ok) return parts;
  const { low, unit, gauge, numbers, notice } = parts.value;
  const high = parts.value.high ?? low;
  if (low > high) {
    const swapped = `${high} .. ${low} ${parts.value.symbol}`;
    return problem('reversed', `The range runs from ${low} down to ${high}`, numbers, [swapped]);
  }
  const range = { dimension, low: canonical(low, unit), high: canonical(high, unit), unit, gauge };
  return succeed(withNotice(range, notice));
}

function withNotice<Value>(value: Value, notice: ReadNotice | undefined): ReadResult<Value> {
  return notice === undefined ? { value } : { value, notice };
}

function canonical(number: number, unit: Unit): number {
  return number * unit.factor + unit.offset;
}

function readParts(text: string, dimension: Dimension): Outcome<Parts, ReadProblem> {
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
  const numbers = textRange(groupRange(2).start, highText === undefined ? groupRange(2).end : groupRange(4).end);
  if (rest.startsWith(',') || rest.startsWith('..')) return misreadNumber(text, dimension);
  const low = Number(lowText);
  const high = highText === undefined ? undefined : Number(highText);
  if (!Number.isFinite(low) || (high !== undefined && !Number.isFinite(high))) {
    return problem('not-finite', `The number ${quote(text)} is too large`, numbers, []);
  }
  const gauge = dimension === 'pressure' ? GAUGE.exec(rest) : null;
  const symbol = gauge === null ? rest : (gauge[1] ?? '');
  const symbolRange = textRange(groupRange(6).start, groupRange(6).start + symbol.length);
  const written = text
    .trim()
    .slice(0, text.trim().length - rest.length)
    .trim();
  const found = findUnit(dimension, symbol, written, symbolRange, whole);
  if (!found.ok) return found;
  const { unit, notice } = found.value;
  if (info.least !== undefined && gauge === null && canonical(low, unit) < info.least) {
    return problem('below-least', `${quote(text)} is below the least value that ${info.words} can have`, numbers, []);
  }
  const parts = { low, high, numbers, symbol, symbolRange, unit, gauge: gauge !== null };
  return succeed(notice === undefined ? parts : { ...parts, notice });
}

function misreadNumber(text: string, dimension: Dimension): Outcome<never, ReadProblem> {
  const whole = textRange(0, text.length);
  const corrected = text.replace(EVERY_DECIMAL_COMMA, '$1.$2').replace(/\s*\.\.\.+\s*/, ' .. ');
  const readable = corrected !== text && readParts(corrected, dimension).ok;
  if (DECIMAL_COMMA.test(text)) {
    const sentence = `${quote(text)} has a decimal comma; numbers here are written with a point`;
    return problem('decimal-comma', sentence, whole, readable ? [corrected] : []);
  }
  const { words, example } = DIMENSIONS[dimension];
  const sentence = `${quote(text)} is not ${words}, such as ${quote(example)}`;
  return problem('no-number', sentence, whole, readable ? [corrected] : []);
}

function findUnit(
  dimension: Dimension,
  symbol: string,
  written: string,
  range: TextRange,
  whole: TextRange,
): Outcome<{ unit: Unit; notice?: ReadNotice }, ReadProblem> {
  const info = DIMENSIONS[dimension];
  const unit = unitOf(dimension, symbol);
  if (unit !== undefined) return succeed({ unit });
  const suggestions = info.units.map((known) => `${written} ${known.symbol}`);
  if (symbol === '') {
    const sentence = `${quote(written)} needs a unit: ${info.units.map((known) => known.symbol).join(', ')}`;
    return problem('no-unit', sentence, whole, suggestions);
  }
  if (dimension === 'temperature-difference' && (symbol === 'degC' || symbol === '°C')) {
    const kelvin = info.units[0] as Unit;
    return succeed({ unit: kelvin, notice: { kind: 'difference-in-degrees', range, suggestion: `${written} K` } });
  }
  const near = info.units.filter((known) => sameLetters(known, symbol)).map((known) => `${written} ${known.symbol}`);
  const others = dimensionsOf(symbol);
  if (others.length > 0) {
    const is = DIMENSIONS[others[0] as Dimension].words;
    const sentence = `${quote(`${written} ${symbol}`)} is ${is}, and ${info.words} is expected here, such as ${quote(info.example)}`;
    return problem('wrong-dimension', sentence, range, near);
  }
  const units = info.units.map((known) => known.symbol).join(', ');
  const sentence = `${quote(symbol)} is no unit of ${info.words}; it is written in ${units}`;
  return problem('unknown-unit', sentence, range, near.length > 0 ? near : suggestions);
}

function sameLetters(unit: Unit, symbol: string): boolean {
  const plain = (text: string): string => text.toLowerCase().replace(/[^a-z0-9%]/g, '');
  const typed = plain(symbol);
  const names = [unit.symbol, ...unit.aliases].map(plain);
  return names.some((name) => name === typed || (typed.length > 0 && name.replace(/^deg/, '') === typed));
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
