/** The form of a value with a unit, or of a range, taken apart with the place of every piece; nothing is judged yet. */
import { type TextRange, textRange } from '../base/text-range.ts';

/** A point that ends a number is not the first of the two of a range. */
const NUMBER = String.raw`[+-]?(?:\d+(?:\.(?!\.)\d*)?|\.\d+)(?:[eE][+-]?\d+)?`;
/** What stands behind the numbers is no further digit, point or comma: such a text is no value. */
const FORM = new RegExp(String.raw`^\s*(${NUMBER})(?:\s*\.\.(?!\.)\s*(${NUMBER}))?\s*((?![\d.,]).*?)\s*$`, 'd');
const GAUGE = /\s*\(g\)$/;

/** Longer texts are no values. */
export const LONGEST_VALUE = 200;

export interface ValueForm {
  readonly lowText: string;
  /** Absent where one value is written. */
  readonly highText: string | undefined;
  readonly low: number;
  /** The same as `low` where one value is written. */
  readonly high: number;
  /** All that stands behind the numbers. */
  readonly rest: string;
  /** The unit, without the mark of a gauge pressure. */
  readonly symbol: string;
  readonly gauge: boolean;
  readonly numbersRange: TextRange;
  readonly symbolRange: TextRange;
}

/** @returns undefined where the text does not start with a number */
export function takeApart(text: string): ValueForm | undefined {
  const match = text.length <= LONGEST_VALUE ? FORM.exec(text) : null;
  if (match === null) return undefined;
  const [, lowText = '', highText, rest = ''] = match;
  const placeOf = (group: number): readonly [number, number] => match.indices?.[group] ?? [0, text.length];
  const [numbersStart] = placeOf(1);
  const [, numbersEnd] = placeOf(highText === undefined ? 1 : 2);
  const [symbolStart] = placeOf(3);
  const symbol = rest.replace(GAUGE, '');
  return {
    lowText,
    highText,
    low: Number(lowText),
    high: Number(highText ?? lowText),
    rest,
    symbol,
    gauge: symbol !== rest,
    numbersRange: textRange(numbersStart, numbersEnd),
    symbolRange: textRange(symbolStart, symbolStart + symbol.length),
  };
}

/** The numbers as a file spells them, without a unit: `35 .. 88`. */
export function numbersOf({ lowText, highText }: ValueForm): string {
  return highText === undefined ? lowText : `${lowText} .. ${highText}`;
}
