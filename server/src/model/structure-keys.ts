/** Keys that are unknown, missing, too many, or no names: in words, with the edits that mend them. */
import { nearestWord } from '../base/nearest.ts';
import { lowerFirst, quoted } from '../base/words.ts';
import { originOf, type PairCursor, rootCursor, textOf } from '../syntax/cursor.ts';
import { appendPair, type PartEdit, removePair, renameKey, replaceScalar } from '../syntax/edit.ts';
import { cutTextAt } from './cut-text.ts';
import { type SuggestedEdit, suggestion } from './problem.ts';
import { branchOf, childSchema, resolveSchema, type SchemaNode } from './schema.ts';
import { isEmpty, kindOf, type Place, type StructureContext } from './structure-place.ts';
import { type Break, broken, MOST_CHOICES, quotedList, shortList, wellFormedLike } from './structure-values.ts';

export function unknownKey(name: string, place: Place, context: StructureContext): Break | undefined {
  const pair = context.walker.pairs(place.cursor).find(({ key }) => key.text === name);
  if (pair === undefined) return undefined;
  const known = keysLeft(place, context);
  const meant = keyMeant(name, known);
  if (meant !== undefined) return misspelt(pair, meant, place);
  const cut = cutTextAt(place.cursor, name);
  if (cut === undefined) return broken(pair.keyOrigin, noKeyOf(pair, place, knownList(known)), removal(pair, place));
  if (!cut.isFirst) return undefined;
  const sentence = `In { } a comma ends a text, so that ${quoted(cut.text)} has to stand in quotes`;
  return broken(pair.keyOrigin, sentence, suggestion(`Write "${cut.text}"`, 'safe', cut.edit));
}

function misspelt(pair: PairCursor, { key, valueTyped, isNear }: KeyMeant, place: Place): Break {
  if (valueTyped !== undefined) {
    const written = `${key}: ${valueTyped}`;
    const fixes = suggestion(`Write ${quoted(written)}`, 'safe', renamed(pair, written));
    return broken(pair.keyOrigin, `A colon is missing behind ${quoted(key)}`, fixes);
  }
  const change = suggestion(`Change to ${quoted(key)}`, isNear ? 'safe' : 'choice', renamed(pair, key));
  const sentence = noKeyOf(pair, place, `; the nearest is ${quoted(key)}`);
  return broken(pair.keyOrigin, sentence, [...change, ...removal(pair, place)]);
}

function noKeyOf({ key }: PairCursor, { owner }: Place, hint: string): string {
  return `${quoted(key.text)} is no key of ${owner}${hint}`;
}

/** At the top level, which is put together from all parts, the pair stands in a part of its own. */
function removal({ key, keyOrigin }: PairCursor, { cursor, isTopLevel }: Place): readonly SuggestedEdit[] {
  const own = rootCursor(keyOrigin.part);
  const map = isTopLevel && own !== undefined ? own : cursor;
  return suggestion(`Remove ${quoted(key.text)}`, 'choice', removePair(map, key.text));
}

/** The key that an unknown one at a place was probably meant to be. */
export function keyMeantBy(name: string, place: Place, context: StructureContext): string | undefined {
  return keyMeant(name, keysLeft(place, context))?.key;
}

interface KeyMeant {
  readonly key: string;
  /** Only one letter is wrong. */
  readonly isNear: boolean;
  /** What stands behind the key where the colon is missing. */
  readonly valueTyped?: string;
}

function keyMeant(name: string, known: readonly string[]): KeyMeant | undefined {
  const start = known.find((key) => name.startsWith(`${key} `));
  if (start !== undefined) return { key: start, isNear: true, valueTyped: name.slice(start.length).trim() };
  const near = nearestWord(name, known);
  return near === undefined ? undefined : { key: near.word, isNear: near.distance === 1 };
}

/** The keys that a map may have and does not have yet. */
function keysLeft({ cursor, schema }: Place, context: StructureContext): readonly string[] {
  const given = context.walker.pairs(cursor).map(({ key }) => key.text);
  const branch = branchOf(context.kind, schema, kindOf(cursor, context));
  return Object.keys(branch.properties ?? {}).filter((key) => !given.includes(key));
}

export function missingKey(name: string, place: Place, { kind }: StructureContext): Break {
  const schema = childSchema(kind, place.schema, name) ?? {};
  return broken(place.origin, `${place.name} needs the key ${quoted(name)}`, additions(name, place, schema));
}

/** Exactly one of several keys is wanted, and none or more than one is given. */
export function wrongChoice(place: Place, { walker }: StructureContext): Break {
  const choices = keysToChoose(place.schema);
  const given = walker.pairs(place.cursor).map(({ key }) => key.text);
  const both = choices.filter((choice) => given.includes(choice));
  const one = `exactly one of ${quotedList(choices)}`;
  if (both.length === 0) {
    const add = choices.flatMap((choice) => additions(choice, place, {}));
    return broken(place.origin, `${place.name} needs ${one}, and has none`, add);
  }
  const remove = both.flatMap((choice) =>
    suggestion(`Remove ${quoted(choice)}`, 'choice', removePair(place.cursor, choice)),
  );
  return broken(place.origin, `${place.name} takes ${one}, and has ${both.map(quoted).join(' and ')}`, remove);
}

function keysToChoose({ oneOf = [] }: SchemaNode): readonly string[] {
  return oneOf.flatMap(({ required = [] }) => required);
}

/** The key that decides which other keys there are is missing, or says nothing that is known. */
export function wrongBranch(place: Place, { kind, walker }: StructureContext): Break {
  const name = place.schema.discriminator?.propertyName ?? 'kind';
  const branches = (place.schema.oneOf ?? []).map((branch) => resolveSchema(kind, branch));
  const kinds = branches.flatMap((branch) => branch.properties?.[name]?.const ?? []).map(String);
  const pair = walker.pairs(place.cursor).find(({ key }) => key.text === name);
  if (pair === undefined) {
    const sentence = `${place.name} needs the key ${quoted(name)}, one of ${quotedList(kinds)}`;
    return broken(place.origin, sentence, additions(name, place, { enum: kinds }));
  }
  const typed = textOf(pair.value);
  const near = nearestWord(typed, kinds);
  const offered = near === undefined ? kinds : [near.word];
  return broken(
    isEmpty(pair.value) ? pair.keyOrigin : originOf(pair.value),
    `${quoted(name)} of ${place.owner} is one of ${quotedList(kinds)}, not ${quoted(typed)}`,
    offered.flatMap((word) => suggestion(`Change to ${quoted(word)}`, 'choice', replaceScalar(pair.value, word))),
  );
}

/** A key of a map with free names is not as such names are. */
export function wrongName(name: string, place: Place, context: StructureContext): Break | undefined {
  const pair = context.walker.pairs(place.cursor).find(({ key }) => key.text === name);
  const names = place.schema.propertyNames;
  return pair === undefined || names === undefined ? undefined : wrongNameOf(pair, resolveSchema(context.kind, names));
}

/** @param names the schema of such names */
export function wrongNameOf(pair: PairCursor, names: SchemaNode): Break {
  const name = pair.key.text;
  const change = (word: string, kind: 'safe' | 'choice'): readonly SuggestedEdit[] =>
    suggestion(`Change to ${quoted(word)}`, kind, renamed(pair, word));
  if (names.enum === undefined) {
    const meant = wellFormedLike(name, names.pattern);
    const sentence = `${quoted(name)} is not ${nameWords(names)}`;
    return broken(pair.keyOrigin, sentence, meant === undefined ? [] : change(meant, 'choice'));
  }
  const allowed = names.enum.map(String);
  const near = nearestWord(name, allowed);
  const hint = near === undefined ? knownList(allowed) : `; the nearest is ${quoted(near.word)}`;
  const fixes = near === undefined ? [] : change(near.word, near.distance === 1 ? 'safe' : 'choice');
  return broken(pair.keyOrigin, `${quoted(name)} is not known here${hint}`, fixes);
}

/** `the tag of a measurement point as the plant uses it, without blanks, such as “K2-MT-101”` */
function nameWords({ description = 'A name', examples = [] }: SchemaNode): string {
  const words = lowerFirst(description).replace(/\.$/, '');
  return examples[0] === undefined ? words : `${words}, such as ${quoted(String(examples[0]))}`;
}

/** A key that is seen through an alias is left as it is. */
function renamed({ key, keyOrigin }: PairCursor, name: string): PartEdit | undefined {
  return keyOrigin.definedAt === undefined ? renameKey(keyOrigin.part, { key }, name) : undefined;
}

/** Adds a key: with its one value, with each of a few, or to be filled in. */
function additions(name: string, place: Place, schema: SchemaNode): readonly SuggestedEdit[] {
  const { cursor } = place;
  if (schema.const !== undefined) {
    const text = String(schema.const);
    return suggestion(`Add “${name}: ${text}”`, 'safe', appendPair(cursor, name, text));
  }
  const words = schema.type === 'boolean' ? ['true', 'false'] : (schema.enum ?? []).map(String);
  if (words.length === 0 || words.length > MOST_CHOICES) {
    return suggestion(`Add “${name}:” to be filled in`, 'choice', appendPair(cursor, name, ''));
  }
  return words.flatMap((word) => suggestion(`Add “${name}: ${word}”`, 'choice', appendPair(cursor, name, word)));
}

function knownList(keys: readonly string[]): string {
  if (keys.length === 0) return '';
  return keys.length === 1 ? `; the only one is ${shortList(keys)}` : `; known are ${shortList(keys)}`;
}
