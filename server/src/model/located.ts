import { type Cursor, originOf, type PairCursor } from '../syntax/cursor.ts';
import type { Origin } from '../syntax/nodes.ts';

/** A value with its place in a file. */
export interface Located<Value> {
  readonly value: Value;
  readonly origin: Origin;
  /** The key that names it, where it has one. */
  readonly keyOrigin?: Origin;
  /** The node it was read from, for edits. */
  readonly cursor: Cursor;
}

export function locatedPair<Value>({ value: cursor, keyOrigin }: PairCursor, value: Value): Located<Value> {
  return { value, origin: originOf(cursor), keyOrigin, cursor };
}
