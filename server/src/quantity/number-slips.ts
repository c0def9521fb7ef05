/** Usual slips in writing numbers: a decimal comma, another dash than the hyphen, digits in groups. */

export interface Slip {
  /** What is wrong with the text, as the end of a sentence that starts with it. */
  readonly words: string;
  /** The text as it was probably meant, likeliest first. */
  readonly mended: readonly string[];
}

interface Mending {
  readonly words: string;
  mend(text: string): string;
}

/** Applied one after the other, so that a text with several slips comes out whole. Minus sign, dashes, ellipsis by their codes. */
const MENDINGS: readonly Mending[] = [
  {
    words: 'is no range; a range is written LOW .. HIGH UNIT',
    mend: (text) =>
      text.replace(
        /(\d)\s*(?:\.{2,}|\u2026|[-\u2212\u2013\u2014]|\s(?:to|and)\s)\s*(?=[+\u2212\u2013-]?[\d.])/,
        '$1 .. ',
      ),
  },
  {
    words: 'has a dash that is no minus sign here; it is typed as a hyphen',
    mend: (text) => text.replace(/(^|\.\. )\s*[\u2212\u2013\u2014]\s*(?=[\d.])/g, '$1-'),
  },
  {
    words: 'has a decimal comma; numbers here are written with a point',
    mend: (text) => text.replace(/(\d),(?=\d)/g, '$1.'),
  },
  {
    words: 'has a gap in its number; numbers here are written in one piece',
    mend: (text) => text.replace(/(\d)[\s'_](?=\d{3}(?!\d))/g, '$1'),
  },
];

/** A comma that may set off thousands: one to three digits before it, none of them a leading zero, three behind it. */
const THOUSANDS = /(?<![\d.,])([1-9]\d{0,2}),(?=\d{3}(?!\d))/g;

/** @returns undefined where the text has none of the usual slips */
export function slipIn(text: string): Slip | undefined {
  const first = MENDINGS.find(({ mend }) => mend(text) !== text);
  if (first === undefined) return undefined;
  const mendAll = (from: string): string => MENDINGS.reduce((mended, { mend }) => mend(mended), from);
  const readings = new Set([mendAll(text), mendAll(text.replace(THOUSANDS, '$1'))]);
  return { words: first.words, mended: [...readings] };
}
