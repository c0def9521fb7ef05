/** Reads `24 V`, `-40 degC`, `35 .. 88 %RH`, `1.2 bar(g)` with the exact place of every part inside the text. */
import { fail, type Outcome, succeed } from '../base/outcome.ts';
import { type TextRange, textRange } from '../base/text-range.ts';
import { quoted } from '../base/words.ts';
import { canonical, DIMENSIONS, type Dimension, dimensionsOf, type Unit, unitOf } from './dimension.ts';
import { likelyUnits, resemblingUnits } from './likely-units.ts';
import { slipIn } from './number-slips.ts';
import type { Quantity, QuantityRange } from './quantity.ts';
import { LONGEST_VALUE, numbersOf, takeApart, type ValueForm } from './value-form.ts';

export type ReadProblemKind =
  | 'no-number'
  | 'no-unit'
  | 'unknown-unit'
  | 'wrong-dimension'
  | 'mistyped'
  | 'not-finite'
  | 'below-least'
  | 'above-most'
  | 'negative'
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
  readonly notice?: ReadNotice | undefined;
}

/** One text as read: its form, its unit, its numbers in the canonical unit. */
interface Reading {
  readonly form: ValueForm;
  readonly unit: Unit;
  readonly low: number;
  readonly high: number;
  readonly notice?: ReadNotice | undefined;
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
  return orWithoutSlip(text, (plain) => {
    const reading = readForm(plain, dimension, example);
    if (!reading.ok) return reading;
    const { form, low, unit, notice } = reading.value;
    if (form.highText !== undefined) {
      const choices = [`${form.lowText} ${form.rest}`, `${form.highText} ${form.rest}`];
      return problem('not-a-value', 'One value is expected here, not a range', form.numbersRange, choices);
    }
    return succeed({ value: { dimension, value: low, unit, gauge: form.gauge }, notice });
  });
}

/** Reads `LOW .. HIGH UNIT` of a dimension; a single value reads as a range of no width. */
export function readRange(
  text: string,
  dimension: Dimension,
  example?: string,
): Outcome<ReadResult<QuantityRange>, ReadProblem> {
  return orWithoutSlip(text, (plain) => {
    const reading = readForm(plain, dimension, example);
    if (!reading.ok) return reading;
    const { form, low, high, unit, notice } = reading.value;
    const { lowText, highText = lowText, rest, numbersRange, gauge } = form;
    if (low > high) {
      const sentence = `The range runs from ${lowText} down to ${highText}; the lower value comes first`;
      return problem('reversed', sentence, numbersRange, [`${highText} .. ${lowText} ${rest}`]);
    }
    return succeed({ value: { dimension, low, high, unit, gauge }, notice });
  });
}

/** What was read of a text, where it is not below zero. */
export function notNegative(
  read: Outcome<ReadResult<Quantity>, ReadProblem>,
  text: string,
): Outcome<ReadResult<Quantity>, ReadProblem> {
  if (!read.ok || read.value.value.value >= 0) return read;
  const sentence = `${quoted(text)} is below zero, which this value cannot be`;
  return problem('negative', sentence, textRange(0, text.length), [text.replace('-', '').trim()]);
}

/** Reads a text; where that fails for one of the usual slips, says so and suggests the text without it. */
function orWithoutSlip<Value>(
  text: string,
  read: (text: string) => Outcome<Value, ReadProblem>,
): Outcome<Value, ReadProblem> {
  const outcome = read(text);
  if (outcome.ok || text.length > LONGEST_VALUE) return outcome;
  if (outcome.problem.kind !== 'no-number' && outcome.problem.kind !== 'unknown-unit') return outcome;
  const slip = slipIn(text);
  const suggestions = (slip?.mended ?? []).flatMap((mended) => {
    const again = read(mended);
    return again.ok ? [mended.trim()] : again.problem.suggestions;
  });
  if (slip === undefined || suggestions.length === 0) return outcome;
  return problem('mistyped', `${quoted(text)} ${slip.words}`, textRange(0, text.length), suggestions);
}

function readForm(text: string, dimension: Dimension, example: string | undefined): Outcome<Reading, ReadProblem> {
  const { words, example: ownExample, least, most } = DIMENSIONS[dimension];
  const form = takeApart(text);
  if (form === undefined) {
    const sentence = `${quoted(text)} is not ${words}, such as ${quoted(ownExample)}`;
    return problem('no-number', sentence, textRange(0, text.length), []);
  }
  if (!Number.isFinite(form.low) || !Number.isFinite(form.high)) {
    return problem('not-finite', `The number ${quoted(text)} is too large`, form.numbersRange, []);
  }
  const found = findUnit(dimension, form, example);
  if (!found.ok) return found;
  const { unit, notice } = found.value;
  const [low, high] = [canonical(form.low, unit), canonical(form.high, unit)];
  if (least !== undefined && !form.gauge && Math.min(low, high) < least) {
    const sentence = `${quoted(text)} is below the least value that ${words} can have`;
    return problem('below-least', sentence, form.numbersRange, []);
  }
  if (most !== undefined && Math.max(low, high) > most) {
    const sentence = `${quoted(text)} is more than ${words} can be in such a place`;
    return problem('above-most', sentence, form.numbersRange, []);
  }
  return succeed({ form, unit, low, high, notice });
}

interface FoundUnit {
  readonly unit: Unit;
  readonly notice?: ReadNotice;
}

function findUnit(dimension: Dimension, form: ValueForm, example: string | undefined): Outcome<FoundUnit, ReadProblem> {
  const { words, units, example: ownExample } = DIMENSIONS[dimension];
  const { rest, symbol, symbolRange: range, numbersRange } = form;
  const numbers = numbersOf(form);
  const isGaugeOfAnother = form.gauge && dimension !== 'pressure';
  const unit = isGaugeOfAnother ? undefined : unitOf(dimension, symbol);
  if (unit !== undefined) return succeed({ unit });
  const symbols = units.map((known) => known.symbol).join(', ');
  const largest = Math.abs(form.low) > Math.abs(form.high) ? form.low : form.high;
  const likely = likelyUnits(largest, dimension, example).map((known) => `${numbers} ${known.symbol}`);
  if (rest === '') {
    const sentence = `${quoted(numbers)} needs a unit: ${symbols}`;
    return problem('no-unit', sentence, numbersRange, likely);
  }
  const kelvin = unitOf(dimension, 'K');
  if (dimension === 'temperature-difference' && kelvin !== undefined && (rest === 'degC' || rest === '°C')) {
    return succeed({ unit: kelvin, notice: { kind: 'difference-in-degrees', range, suggestion: `${numbers} K` } });
  }
  const near = resemblingUnits(symbol, dimension).map((known) => `${numbers} ${known}`);
  const [other] = dimensionsOf(symbol);
  if (other !== undefined && symbol !== '') {
    const is = `${quoted(`${numbers} ${rest}`)} is ${DIMENSIONS[other].words}`;
    return problem(
      'wrong-dimension',
      `${is}, and ${words} is expected here, such as ${quoted(ownExample)}`,
      range,
      near,
    );
  }
  const sentence = `${quoted(rest)} is no unit of ${words}; it is written in ${symbols}`;
  return problem('unknown-unit', sentence, range, near.length > 0 ? near : likely);
}

function problem(
  kind: ReadProblemKind,
  sentence: string,
  range: TextRange,
  suggestions: readonly string[],
): Outcome<never, ReadProblem> {
  return fail({ kind, sentence, range, suggestions });
}
