/** Values that are of the wrong kind, no known word or out of their limits: in words, with the edits that mend them. */
import { nearestWord } from '../base/nearest.ts';
import { quoted } from '../base/words.ts';
import { originOf, textOf } from '../syntax/cursor.ts';
import { replaceScalar } from '../syntax/edit.ts';
import { removeItem } from '../syntax/edit-list.ts';
import type { Origin } from '../syntax/nodes.ts';
import { type SuggestedEdit, suggestion } from './problem.ts';
import type { SchemaNode } from './schema.ts';
import { isEmpty, type Place, type StructureContext } from './structure-place.ts';
import type { SchemaError } from './validators.ts';

export interface Break {
  readonly origin: Origin;
  /** One sentence without its stop. */
  readonly sentence: string;
  readonly suggestions: readonly SuggestedEdit[];
}

/** More words than this are not offered one by one. */
export const MOST_CHOICES = 5;

export function broken(origin: Origin, sentence: string, suggestions: readonly SuggestedEdit[] = []): Break {
  return { origin, sentence, suggestions };
}

export function quotedList(words: readonly string[]): string {
  return words.map(quoted).join(', ');
}

/** No more words than can be taken in at a glance. */
export function shortList(words: readonly string[]): string {
  return `${quotedList(words.slice(0, 8))}${words.length > 8 ? ' and more' : ''}`;
}

/** The value is none of the words that are known. */
export function wrongWord(place: Place): Break {
  const { enum: words, const: one } = place.schema;
  const allowed = (words ?? (one === undefined ? [] : [one])).map(String);
  const typed = textOf(place.cursor);
  const near = nearestWord(typed, allowed);
  const few = allowed.length <= MOST_CHOICES;
  const offered = near !== undefined ? [near.word] : few ? allowed : [];
  const fixes = offered.flatMap((word) => {
    const title = isEmpty(place.cursor) ? `Write ${quoted(word)}` : `Change to ${quoted(word)}`;
    return suggestion(title, 'choice', replaceScalar(place.cursor, word));
  });
  const is = allowed.length === 1 ? 'is' : 'is one of';
  const sentence =
    near !== undefined && !few
      ? `${place.name} cannot be ${quoted(typed)}; the nearest word is ${quoted(near.word)}`
      : instead(place, `${is} ${shortList(allowed)}`);
  return broken(place.valueOrigin, sentence, fixes);
}

/** The value does not have the form that its examples have. */
export function wrongPattern(place: Place): Break {
  const { pattern, examples = [] } = place.schema;
  const meant = wellFormedLike(textOf(place.cursor), pattern);
  const fixes =
    meant === undefined ? [] : suggestion(`Change to ${quoted(meant)}`, 'choice', replaceScalar(place.cursor, meant));
  const like = quotedList(examples.slice(0, 3).map(String));
  return broken(place.valueOrigin, instead(place, `is written like ${like}`), fixes);
}

/** A map where a text is expected, a text where a list is, and so on. */
export function wrongType(place: Place): Break {
  const { cursor } = place;
  const { node } = cursor;
  const typed = textOf(cursor);
  const fixes: SuggestedEdit[] = [];
  if (node.kind === 'scalar' && node.value !== null) {
    const types = typesOf(place.schema);
    const plain = node.textStart === node.start;
    const isText = types.includes('string') && place.schema.quantity === undefined;
    if (types.includes('array')) fixes.push(...write(place, `[${typed}]`));
    else if (isText && plain) fixes.push(...write(place, `"${typed}"`));
    else if (types.includes('number') && !plain && /^-?\d+(\.\d+)?$/.test(typed)) fixes.push(...write(place, typed));
  }
  return broken(place.valueOrigin, instead(place, `takes ${wantedWords(place.schema)}`), fixes);
}

/** A number beyond its limits, a list that is too short or names something twice. */
export function outOfLimits(error: SchemaError, place: Place, { walker }: StructureContext): Break {
  if (error.keyword === 'uniqueItems') {
    const item = walker.items(place.cursor)[Number(error.params.i)];
    if (item !== undefined) {
      const fixes = suggestion('Remove the second', 'safe', removeItem(place.cursor, item.node.start));
      return broken(originOf(item), `${place.name} lists ${quoted(textOf(item))} twice`, fixes);
    }
  }
  return broken(place.valueOrigin, `${place.name} ${limitWords(error)}`);
}

/** The text as names are written, where little is wrong with it: `Kiln 2` is `kiln-2`. */
export function wellFormedLike(text: string, pattern: string | undefined): string | undefined {
  if (pattern === undefined) return undefined;
  const form = new RegExp(pattern);
  const joined = text.trim().replace(/\s+/g, '-');
  const kebab = text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return [joined, kebab].find((candidate) => form.test(candidate));
}

function write(place: Place, text: string): readonly SuggestedEdit[] {
  return suggestion(`Write ${text}`, 'safe', replaceScalar(place.cursor, text));
}

/** `“mode” is one of …, not “onn”`, `“mode” is empty; it is one of …` */
function instead({ name, cursor }: Place, wanted: string): string {
  if (isEmpty(cursor)) return `${name} is empty; it ${wanted}`;
  return `${name} ${wanted}, not ${cursor.node.kind === 'scalar' ? quoted(textOf(cursor)) : `a ${cursor.node.kind}`}`;
}

function wantedWords(schema: SchemaNode): string {
  const types = typesOf(schema);
  const [example] = schema.examples ?? [];
  if (schema.quantity !== undefined)
    return example === undefined ? 'a value' : `a value such as ${quoted(String(example))}`;
  if (types.includes('object')) return 'a map of keys';
  if (types.includes('array')) return 'a list';
  if (types.includes('boolean')) return 'true or false';
  if (types.includes('string')) return example === undefined ? 'a text' : `a text such as ${quoted(String(example))}`;
  return types.includes('integer') ? 'a whole number' : 'a number';
}

function typesOf({ type }: SchemaNode): readonly string[] {
  return type === undefined ? [] : [type].flat();
}

function limitWords({ keyword, params }: SchemaError): string {
  const limit = String(params.limit);
  switch (keyword) {
    case 'minimum':
      return `must be at least ${limit}`;
    case 'exclusiveMinimum':
      return `must be above ${limit}`;
    case 'maximum':
      return `must be at most ${limit}`;
    case 'minItems':
    case 'minProperties':
      return `needs at least ${limit === '1' ? 'one entry' : `${limit} entries`}`;
    default:
      return 'does not fit here';
  }
}
