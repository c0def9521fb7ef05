import type { Cursor } from '../syntax/cursor.ts';
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
