/** Where a break of the schema lies in the text, and what the thing there is called. */
import { lowerFirst } from '../base/words.ts';
import { type Cursor, originOf, type PairCursor, type TreeWalker, textOf } from '../syntax/cursor.ts';
import type { Origin } from '../syntax/nodes.ts';
import type { ProblemContext } from './problem.ts';
import { childSchema, type FileKind, resolveSchema, type SchemaNode } from './schema.ts';

export interface StructureContext extends ProblemContext {
  readonly kind: FileKind;
  readonly walker: TreeWalker;
}

/** The entry or root that is checked. */
export interface CheckedRoot {
  readonly cursor: Cursor;
  readonly schema: SchemaNode;
  /** Where what concerns the whole is reported: the entry's key. */
  readonly place: Origin;
}

export interface Place {
  readonly cursor: Cursor;
  readonly schema: SchemaNode;
  /** The pair that holds it, or that holds the list it is an item of; absent for the entry or root itself. */
  readonly key: PairCursor | undefined;
  /** True for the root of a file. */
  readonly isTopLevel: boolean;
  /** Where to point for what concerns the thing as a whole. */
  readonly origin: Origin;
  /** Where to point for what concerns its value. */
  readonly valueOrigin: Origin;
  /** `The space “kiln-2”`, `“air”`, `An item of “accuracy”`. */
  readonly name: string;
  /** What unknown keys are no keys of: `a space`, `“air”`. */
  readonly owner: string;
}

/** Follows a JSON pointer through the tree and the schema together, as far as it leads. */
export function placeOf(pointer: string, root: CheckedRoot, context: StructureContext): Place {
  let place = rootPlace(root, context);
  for (const step of pointer.split('/').slice(1)) {
    const name = step.replace(/~1/g, '/').replace(/~0/g, '~');
    const next =
      place.cursor.node.kind === 'list' ? itemOf(place, Number(name), context) : pairOf(place, name, context);
    if (next === undefined) return place;
    place = next;
  }
  return place;
}

/** The value of `kind` in a map whose kind decides its keys. */
export function kindOf(map: Cursor, { walker }: StructureContext): string | undefined {
  const pair = walker.pairs(map).find((candidate) => candidate.key.text === 'kind');
  return pair === undefined ? undefined : textOf(pair.value);
}

export function isEmpty({ node }: Cursor): boolean {
  return node.kind === 'scalar' && node.value === null && node.text === '';
}

function rootPlace({ cursor, schema, place }: CheckedRoot, { kind, subject }: StructureContext): Place {
  const resolved = resolveSchema(kind, schema);
  const thing = lowerFirst(resolved.title ?? 'Entry');
  return {
    cursor,
    schema: resolved,
    key: undefined,
    isTopLevel: subject === '',
    origin: place,
    valueOrigin: place,
    name: subject === '' ? `The ${thing}` : `The ${thing} “${subject}”`,
    owner: `${/^[aeiou]/.test(thing) ? 'an' : 'a'} ${thing}`,
  };
}

function itemOf(list: Place, index: number, { kind, walker }: StructureContext): Place | undefined {
  const cursor = walker.items(list.cursor)[index];
  if (cursor === undefined) return undefined;
  const valueOrigin = originOf(cursor);
  const [firstPair] = walker.pairs(cursor);
  const listName = list.key?.key.text ?? '';
  return {
    cursor,
    schema: resolveSchema(kind, list.schema.items ?? {}),
    key: list.key,
    isTopLevel: false,
    origin: firstPair?.keyOrigin ?? valueOrigin,
    valueOrigin,
    name: `An item of “${listName}”`,
    owner: `an item of “${listName}”`,
  };
}

function pairOf(map: Place, name: string, context: StructureContext): Place | undefined {
  const pair = context.walker.pairs(map.cursor).find((candidate) => candidate.key.text === name);
  if (pair === undefined) return undefined;
  return {
    cursor: pair.value,
    schema: childSchema(context.kind, map.schema, name, kindOf(map.cursor, context)) ?? {},
    key: pair,
    isTopLevel: false,
    origin: pair.keyOrigin,
    valueOrigin: isEmpty(pair.value) ? pair.keyOrigin : originOf(pair.value),
    name: `“${name}”`,
    owner: `“${name}”`,
  };
}
