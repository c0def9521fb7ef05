/**
 * A document as plain data, from which HTML and Markdown are written. Whatever is not our own words is marked with where
 * it comes from, so that a test can lay every number of a pack against the number that `check` gives for it.
 */
import type { MarkupElement } from '../base/markup.ts';
import { type Fact, isKnown, showCorner, showFact } from '../evaluate/facts/fact.ts';
import type { Located } from '../model/located.ts';
import { showQuantity, showRange } from '../quantity/format-quantity.ts';
import { isQuantityName, quantityInfo } from '../quantity/quantities.ts';
import type { Quantity, QuantityRange } from '../quantity/quantity.ts';

export interface PackDocument {
  readonly title: string;
  /** Stands in the foot of every printed page. */
  readonly revision: string;
  readonly opening: readonly Block[];
  readonly sections: readonly Section[];
}

export interface Section {
  readonly title: Text;
  readonly blocks: readonly Block[];
  readonly sections?: readonly Section[];
  /** Printed on a new page. */
  readonly startsPage?: boolean;
}

export type Block =
  | { readonly kind: 'paragraph'; readonly text: Text }
  | { readonly kind: 'caution'; readonly lines: readonly Text[] }
  | { readonly kind: 'list'; readonly items: readonly Text[] }
  | Table
  | { readonly kind: 'picture'; readonly drawing: MarkupElement; readonly caption: string };

/** The first cell of a row names it. */
export interface Table {
  readonly kind: 'table';
  readonly caption: string;
  /** Empty for a list of names and values. */
  readonly head: readonly string[];
  readonly rows: readonly (readonly Text[])[];
}

/** Our own words, which hold no number, and marked parts between them. */
export type Text = readonly TextPart[];
export type TextPart = string | Mark;

/**
 * `fact`: a number of `check`, `of` which subject and id; `corner`: the state at which it is worst. `stated`: a value of
 * a file. `words`: text of a file, as it is. `told`: a sentence that others have worded, with facts marked in it.
 */
export type Mark =
  | { readonly kind: 'fact' | 'corner'; readonly of: string; readonly text: string }
  | { readonly kind: 'stated' | 'words'; readonly text: string }
  | { readonly kind: 'told'; readonly parts: readonly (string | Mark)[] };

export const NOTHING: Text = ['–'];

/** A fact, or why it has no value. */
export function factText(subject: string, fact: Fact | undefined): Text {
  if (fact === undefined) return NOTHING;
  if (!isKnown(fact)) return ['none: ', told(fact.missing ?? 'not known')];
  return [{ kind: 'fact', of: `${subject}/${fact.id}`, text: showFact(fact) }];
}

export function factWithCorner(subject: string, fact: Fact | undefined): Text {
  if (fact?.at === undefined || !isKnown(fact)) return factText(subject, fact);
  const corner: Mark = { kind: 'corner', of: `${subject}/${fact.id}`, text: showCorner(fact.at) };
  return [...factText(subject, fact), ' at ', corner];
}

/** What a file says: values with units as they are shown everywhere, words as they are. */
export function stated(located: Located<unknown> | undefined): Text {
  if (located === undefined) return NOTHING;
  const { value, cursor } = located;
  if (isRange(value)) return shownAs(showRange(value.low, value.high, value.dimension), value.gauge);
  if (isQuantity(value)) return shownAs(showQuantity(value.value, value.dimension), value.gauge);
  return cursor.node.kind === 'scalar' ? [words(cursor.node.text)] : NOTHING;
}

/** A word of the format as it is said: a quantity by its title, a material or a method without its hyphens. */
export function statedWord(located: Located<string> | undefined): Text {
  if (located === undefined) return NOTHING;
  const { value } = located;
  return [isQuantityName(value) ? quantityInfo(value).title : value.replaceAll('-', ' ')];
}

function shownAs(text: string, gauge: boolean): Text {
  return gauge ? [{ kind: 'stated', text }, ' above the air outside'] : [{ kind: 'stated', text }];
}

export function words(text: string): Mark {
  return { kind: 'words', text };
}

/** A fact with the point or space that it is of. */
export interface OwnedFact {
  readonly subject: string;
  readonly fact: Fact;
}

/** @param facts those whose numbers the sentence names: they are marked where they stand */
export function told(sentence: string, facts: readonly OwnedFact[] = []): Mark {
  let parts: readonly (string | Mark)[] = [sentence];
  for (const { subject, fact } of facts) {
    const text = isKnown(fact) ? showFact(fact) : '';
    parts = parts.flatMap((part) => (typeof part === 'string' ? cutAt(part, text, `${subject}/${fact.id}`) : [part]));
  }
  return { kind: 'told', parts };
}

export function paragraph(...text: Text): Block {
  return { kind: 'paragraph', text };
}

/** None where it would have no rows. */
export function table(caption: string, head: readonly string[], rows: Table['rows']): readonly Table[] {
  return rows.length === 0 ? [] : [{ kind: 'table', caption, head, rows }];
}

/** The first place of a number that is not a part of a longer one. */
function cutAt(sentence: string, number: string, of: string): readonly (string | Mark)[] {
  for (let at = number === '' ? -1 : sentence.indexOf(number); at >= 0; at = sentence.indexOf(number, at + 1)) {
    const [before, after] = [sentence.slice(0, at), sentence.slice(at + number.length)];
    if (/[\d.,-]$/.test(before) || /^\w/.test(after)) continue;
    return [before, { kind: 'fact', of, text: number }, after];
  }
  return [sentence];
}

function isQuantity(value: unknown): value is Quantity {
  return typeof value === 'object' && value !== null && 'dimension' in value && 'value' in value;
}

function isRange(value: unknown): value is QuantityRange {
  return typeof value === 'object' && value !== null && 'dimension' in value && 'low' in value;
}

/** `insertion 200 mm`, or nothing where it is not given. */
export function named(label: string, located: Located<unknown> | undefined): Text {
  return located === undefined ? [] : [`${label} `, ...stated(located)];
}

/** Names and values, those left out of which nothing is said. */
export function nameTable(caption: string, rows: readonly (readonly [name: string, value: Text])[]): readonly Table[] {
  const said = rows.filter(([, value]) => value.length > 0 && value !== NOTHING);
  return table(
    caption,
    [],
    said.map(([name, value]) => [[name], value]),
  );
}

/** Those texts that say something, with commas between; a dash where none does. */
export function listed(...texts: readonly Text[]): Text {
  const said = texts.filter((text) => text.length > 0);
  return said.length === 0 ? NOTHING : said.flatMap((text, index) => (index === 0 ? text : [', ', ...text]));
}
