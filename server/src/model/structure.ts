/** What the compiled schema validators find, in the product's own words and at its place in the text. */
import type { ErrorObject } from 'ajv';
import { nearestWord } from '../base/nearest.ts';
import { type Cursor, originOf, type PairCursor, type TreeWalker } from '../syntax/cursor.ts';
import { appendPair, removePair, renameKey, replaceScalar } from '../syntax/edit.ts';
import type { Origin } from '../syntax/nodes.ts';
import { newBudget, plainValueOf } from '../syntax/plain-value.ts';
import { type ProblemContext, type SuggestedEdit, suggestion } from './problem.ts';
import { branchOf, childSchema, type FileKind, resolveSchema, type SchemaNode } from './schema.ts';

/** What ajv compiles a schema to. */
export interface Validator {
  (value: unknown): boolean;
  errors?: readonly ErrorObject[] | null;
}

export interface StructureContext extends ProblemContext {
  readonly kind: FileKind;
  readonly walker: TreeWalker;
}

/**
 * Checks one entry or root against its schema and reports every break once.
 * @param place where what concerns the whole is reported: the entry's key
 */
export function checkStructure(
  at: Cursor,
  place: Origin,
  schema: SchemaNode,
  validate: Validator,
  context: StructureContext,
): void {
  const value = plainValueOf(at, context.walker, newBudget());
  if (value === undefined) {
    const sentence = 'Aliases here unfold to more values than any file needs, and the entry is not read';
    context.problems.push({ rule: 'yaml-syntax', origin: place, sentence, suggestions: [], subject: context.subject });
  }
  if (validate(value)) return;
  for (const error of withoutNoise(validate.errors ?? [])) {
    const found = wordsOf(error, at, place, schema, context);
    if (found !== undefined) context.problems.push({ rule: 'schema', subject: context.subject, ...found });
  }
}

/** Drops what a `oneOf` says of each branch, and all but the first error at one place. */
function withoutNoise(errors: readonly ErrorObject[]): readonly ErrorObject[] {
  const choices = errors.filter((error) => error.keyword === 'oneOf');
  const inBranch = (error: ErrorObject): boolean =>
    choices.some((choice) => error !== choice && error.schemaPath.startsWith(`${choice.schemaPath}/`));
  const kept: ErrorObject[] = [];
  const seen = new Set<string>();
  for (const error of errors) {
    if (inBranch(error) || error.keyword === 'propertyNames') continue;
    const place = `${error.instancePath} ${detailOf(error)}`;
    if (seen.has(place)) continue;
    seen.add(place);
    kept.push(error);
  }
  return kept;
}

function detailOf(error: ErrorObject): string {
  const params = error.params as Record<string, unknown>;
  return String(params.additionalProperty ?? params.missingProperty ?? error.propertyName ?? '');
}

interface Place {
  readonly cursor: Cursor;
  readonly schema: SchemaNode;
  readonly key: PairCursor | undefined;
}

/** What a break is called and where, or undefined where nothing of the text matches it. */
function wordsOf(
  error: ErrorObject,
  root: Cursor,
  rootPlace: Origin,
  schema: SchemaNode,
  context: StructureContext,
): Break | undefined {
  const place = placeOf(error.instancePath, root, schema, context);
  const own = place.key === undefined ? rootPlace : place.key.keyOrigin;
  const onValue = place.key === undefined ? rootPlace : originOf(place.cursor);
  const params = error.params as Record<string, unknown>;
  switch (error.keyword) {
    case 'additionalProperties':
      return unknownKey(String(params.additionalProperty), place, context);
    case 'required':
      return missingKey(String(params.missingProperty), place, own);
    case 'oneOf':
      return wrongChoice(place, own);
    case 'discriminator':
      return wrongBranch(place, own, context);
    case 'enum':
    case 'const':
      if (error.propertyName !== undefined) return wrongName(error, place, context);
      return wrongWord(error, place, onValue);
    case 'pattern':
      if (error.propertyName !== undefined) return wrongName(error, place, context);
      return broken(onValue, `${shown(place.cursor)} is not written as ${described(place)} is`);
    case 'type':
      return broken(onValue, wrongType(place, params.type));
    default:
      return broken(onValue, `${described(place)}: ${limitWords(error)}`);
  }
}

interface Break {
  readonly origin: Origin;
  readonly sentence: string;
  readonly suggestions: readonly SuggestedEdit[];
}

function broken(origin: Origin, sentence: string, suggestions: readonly SuggestedEdit[] = []): Break {
  return { origin, sentence, suggestions };
}

function unknownKey(name: string, place: Place, context: StructureContext): Break | undefined {
  const pair = context.walker.pairs(place.cursor).find((candidate) => candidate.key.text === name);
  if (pair === undefined) return undefined;
  const branch = branchOf(context.kind, place.schema, kindOf(place.cursor, context));
  const present = new Set(context.walker.pairs(place.cursor).map((candidate) => candidate.key.text));
  const known = Object.keys(branch.properties ?? {}).filter((key) => !present.has(key));
  const near = nearestWord(name, known);
  const title = place.schema.title === undefined ? 'here' : `of ${lowerFirst(place.schema.title)}`;
  const hint = near === undefined ? listOf(known) : `; the nearest is “${near.word}”`;
  const ownPart = pair.keyOrigin.definedAt === undefined && place.cursor.via === undefined;
  const rename = near === undefined || !ownPart ? undefined : renameKey(place.cursor.part, pair, near.word);
  return broken(pair.keyOrigin, `“${name}” is no key ${title}${hint}`, [
    ...suggestion(`Change to “${near?.word}”`, near?.distance === 1 ? 'safe' : 'choice', rename),
    ...suggestion(`Remove “${name}”`, 'choice', removePair(place.cursor, name)),
  ]);
}

function missingKey(name: string, place: Place, own: Origin): Break | undefined {
  return broken(
    own,
    `${named(place)} needs the key “${name}”`,
    suggestion(`Add “${name}:”`, 'choice', appendPair(place.cursor, name, '')),
  );
}

function wrongChoice(place: Place, own: Origin): Break | undefined {
  const choices = (place.schema.oneOf ?? []).flatMap((branch) => branch.required ?? []);
  const given = new Set(place.cursor.node.kind === 'map' ? place.cursor.node.pairs.map((pair) => pair.key.text) : []);
  const both = choices.filter((choice) => given.has(choice));
  const list = choices.map((choice) => `“${choice}”`).join(', ');
  if (both.length === 0) {
    const add = choices.flatMap((choice) =>
      suggestion(`Add “${choice}:”`, 'choice', appendPair(place.cursor, choice, '')),
    );
    return broken(own, `${named(place)} needs exactly one of ${list}, and has none`, add);
  }
  const remove = both.flatMap((choice) => suggestion(`Remove “${choice}”`, 'choice', removePair(place.cursor, choice)));
  const has = both.map((choice) => `“${choice}”`).join(' and ');
  return broken(own, `${named(place)} takes exactly one of ${list}, and has ${has}`, remove);
}

function wrongBranch(place: Place, own: Origin, context: StructureContext): Break | undefined {
  const name = place.schema.discriminator?.propertyName ?? 'kind';
  const branches = (place.schema.oneOf ?? []).map((branch) => resolveSchema(context.kind, branch));
  const kinds = branches.flatMap((branch) => branch.properties?.[name]?.const ?? branch.properties?.[name]?.enum ?? []);
  const pair = context.walker.pairs(place.cursor).find((candidate) => candidate.key.text === name);
  const words = kinds.map((kind) => `“${kind}”`).join(', ');
  if (pair === undefined) {
    const add = kinds.flatMap((kind) =>
      suggestion(`Add “${name}: ${kind}”`, 'choice', appendPair(place.cursor, name, String(kind))),
    );
    return broken(own, `${named(place)} needs “${name}”, one of ${words}`, add);
  }
  const near = nearestWord(shownText(pair.value), kinds.map(String));
  const change = near === undefined ? undefined : replaceScalar(pair.value, near.word);
  return broken(
    originOf(pair.value),
    `${shown(pair.value)} is no ${name} of ${lowerFirst(named(place))}; it is one of ${words}`,
    suggestion(`Change to “${near?.word}”`, 'choice', change),
  );
}

function wrongWord(error: ErrorObject, place: Place, onValue: Origin): Break | undefined {
  const params = error.params as { allowedValues?: readonly unknown[]; allowedValue?: unknown };
  const allowed = (params.allowedValues ?? [params.allowedValue]).map(String);
  const near = nearestWord(shownText(place.cursor), allowed);
  const words = allowed.map((word) => `“${word}”`).join(', ');
  const sentence = allowed.length === 1 ? `${described(place)} is ${words}` : `${described(place)} is one of ${words}`;
  const change = near === undefined ? undefined : replaceScalar(place.cursor, near.word);
  return broken(
    onValue,
    `${sentence}, not ${shown(place.cursor)}`,
    suggestion(`Change to “${near?.word}”`, 'choice', change),
  );
}

/** A key of a map with free names breaks what such names look like. */
function wrongName(error: ErrorObject, place: Place, context: StructureContext): Break | undefined {
  const name = String(error.propertyName);
  const pair = context.walker.pairs(place.cursor).find((candidate) => candidate.key.text === name);
  if (pair === undefined) return undefined;
  const allowed = (error.params as { allowedValues?: readonly string[] }).allowedValues;
  if (allowed === undefined) {
    return broken(
      pair.keyOrigin,
      `“${name}” cannot be a name here; names are written in small letters, digits and hyphens`,
    );
  }
  const near = nearestWord(name, allowed);
  const hint = near === undefined ? listOf(allowed) : `; the nearest is “${near.word}”`;
  const ownPart = pair.keyOrigin.definedAt === undefined && place.cursor.via === undefined;
  const rename = near === undefined || !ownPart ? undefined : renameKey(place.cursor.part, pair, near.word);
  const kind = near?.distance === 1 ? 'safe' : 'choice';
  return broken(
    pair.keyOrigin,
    `“${name}” is not known here${hint}`,
    suggestion(`Change to “${near?.word}”`, kind, rename),
  );
}

function wrongType(place: Place, type: unknown): string {
  const types = [type].flat().map(String);
  const is =
    place.cursor.node.kind === 'scalar' ? shown(place.cursor) : place.cursor.node.kind === 'map' ? 'a map' : 'a list';
  const empty = place.cursor.node.kind === 'scalar' && place.cursor.node.value === null;
  const wanted = types.includes('object')
    ? 'a map of keys'
    : types.includes('array')
      ? 'a list'
      : types.includes('boolean')
        ? 'true or false'
        : types.includes('string')
          ? 'a text'
          : 'a number';
  return empty ? `${described(place)} is empty; it takes ${wanted}` : `${described(place)} takes ${wanted}, not ${is}`;
}

function limitWords(error: ErrorObject): string {
  const { limit } = error.params as { limit?: number };
  switch (error.keyword) {
    case 'minimum':
      return `the least value is ${limit}`;
    case 'exclusiveMinimum':
      return `the value must be above ${limit}`;
    case 'maximum':
      return `the greatest value is ${limit}`;
    case 'minItems':
    case 'minProperties':
      return `at least ${limit} must be given`;
    case 'uniqueItems':
      return 'one item is given twice';
    default:
      return 'the value does not fit';
  }
}

/** Follows a JSON pointer through the tree and the schema together. */
function placeOf(pointer: string, root: Cursor, schema: SchemaNode, context: StructureContext): Place {
  let place: Place = { cursor: root, schema: resolveSchema(context.kind, schema), key: undefined };
  for (const step of pointer.split('/').slice(1)) {
    const name = step.replace(/~1/g, '/').replace(/~0/g, '~');
    if (place.cursor.node.kind === 'list') {
      const item = context.walker.items(place.cursor)[Number(name)];
      if (item === undefined) return place;
      place = { ...place, cursor: item, schema: resolveSchema(context.kind, place.schema.items ?? {}) };
      continue;
    }
    const pair = context.walker.pairs(place.cursor).find((candidate) => candidate.key.text === name);
    if (pair === undefined) return place;
    const child = childSchema(context.kind, place.schema, name, kindOf(place.cursor, context)) ?? {};
    place = { cursor: pair.value, schema: child, key: pair };
  }
  return place;
}

function kindOf(map: Cursor, context: StructureContext): string | undefined {
  const pair = context.walker.pairs(map).find((candidate) => candidate.key.text === 'kind');
  return pair === undefined ? undefined : shownText(pair.value);
}

function named(place: Place): string {
  return place.key === undefined ? (place.schema.title ?? 'This entry') : `“${place.key.key.text}”`;
}

function described(place: Place): string {
  return place.key === undefined ? 'This entry' : `“${place.key.key.text}”`;
}

function shownText(at: Cursor): string {
  return at.node.kind === 'scalar' ? at.node.text : '';
}

function shown(at: Cursor): string {
  const text = shownText(at);
  return at.node.kind === 'scalar' ? `“${text.length > 40 ? `${text.slice(0, 39)}…` : text}”` : `a ${at.node.kind}`;
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

function listOf(keys: readonly string[]): string {
  if (keys.length === 0) return '';
  const shownKeys = keys.slice(0, 8).map((key) => `“${key}”`);
  return `; known are ${shownKeys.join(', ')}${keys.length > 8 ? ' and more' : ''}`;
}
