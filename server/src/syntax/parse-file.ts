/** A whole file to its tree: split, then parse each part. A changed file keeps the parts that its change left alone. */
import type { LineIndex } from '../base/line-index.ts';
import { changeBetween } from '../base/text-change.ts';
import type { Part, PlacedPart, SyntaxTree } from './nodes.ts';
import { parsePart } from './parse-part.ts';
import { linesOf } from './part-lines.ts';
import { type Stretch, splitAgain, splitFile } from './split.ts';

/** Beyond this a file is not a site file that anybody typed. */
export const LARGEST_FILE = 20_000_000;

/**
 * @param text the file
 * @param entryKeys the top-level keys whose entries are parts of their own
 * @param before an earlier version of the file; the result is the same without it, only later
 */
export function parseFile(text: string, entryKeys: ReadonlySet<string>, before?: SyntaxTree): SyntaxTree {
  if (text.length > LARGEST_FILE) return { text, parts: [{ part: tooLarge(), offset: 0, line: 0 }] };
  if (before === undefined) return { text, parts: partsOf(text, splitFile(text, entryKeys), []) };
  const change = changeBetween(before.text, text);
  if (change === undefined) return before;
  const { front, between, back } = splitAgain(text, entryKeys, before.parts, change);
  const parts = partsOf(text, between, before.parts.slice(0, front));
  const following = before.parts.slice(before.parts.length - back);
  const moved = change.newEnd - change.oldEnd;
  const movedLines = lineAfter(parts) - (following[0]?.line ?? 0);
  for (const { part, offset, line } of following) parts.push({ part, offset: offset + moved, line: line + movedLines });
  return { text, parts };
}

/** @param parts what stands above; gets those of the stretches */
function partsOf(text: string, stretches: readonly Stretch[], parts: PlacedPart[]): PlacedPart[] {
  for (const { path, start, end } of stretches) {
    const part = parsePart(path, ownCopy(text.slice(start, end)));
    parts.push({ part, offset: start, line: lineAfter(parts) });
  }
  return parts;
}

/** The line that the next part starts on. */
function lineAfter(parts: readonly PlacedPart[]): number {
  const last = parts.at(-1);
  return last === undefined ? 0 : last.line + linesOf(last.part).lineCount - 1;
}

/** The engine cuts a text out of another by pointing into it: a part would keep its whole file in memory, for every edit. */
function ownCopy(cut: string): string {
  return ` ${cut}`.slice(1);
}

/** Offsets and lines of a whole file, from those of its parts. */
export function linesOfTree({ text, parts }: SyntaxTree): LineIndex {
  return {
    lineCount: lineAfter(parts) + 1,
    positionAt(offset) {
      const clamped = Math.max(0, Math.min(offset, text.length));
      const placed = lastPlaced(parts, (candidate) => candidate.offset <= clamped);
      if (placed === undefined) return { line: 0, character: 0 };
      const inside = linesOf(placed.part).positionAt(clamped - placed.offset);
      return { line: placed.line + inside.line, character: inside.character };
    },
    offsetAt({ line, character }) {
      if (line < 0) return 0;
      const placed = lastPlaced(parts, (candidate) => candidate.line <= line);
      if (placed === undefined) return 0;
      return placed.offset + linesOf(placed.part).offsetAt({ line: line - placed.line, character });
    },
  };
}

/** The last part of which something holds that holds of all parts before it. */
function lastPlaced(parts: readonly PlacedPart[], holds: (part: PlacedPart) => boolean): PlacedPart | undefined {
  let low = 0;
  let high = parts.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const part = parts[middle];
    if (part !== undefined && holds(part)) low = middle + 1;
    else high = middle;
  }
  return parts[low - 1];
}

function tooLarge(): Part {
  const sentence = `The file is longer than ${LARGEST_FILE / 1e6} million characters and is not checked`;
  const problems = [{ start: 0, end: 0, sentence }];
  return {
    path: [],
    text: '',
    root: undefined,
    problems,
    acceptanceComments: [],
    anchors: new Map(),
    foreignAliases: [],
  };
}
