import { type LineIndex, lineIndexOf } from '../base/line-index.ts';
import type { Part } from './nodes.ts';

const KNOWN = new WeakMap<Part, LineIndex>();

/** The lines of one part, counted once. */
export function linesOf(part: Part): LineIndex {
  const known = KNOWN.get(part);
  if (known !== undefined) return known;
  const lines = lineIndexOf(part.text);
  KNOWN.set(part, lines);
  return lines;
}
