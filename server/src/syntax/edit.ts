/**
 * The smallest text changes that add, replace or remove something, in the style the author used. A place that is
 * seen through an alias is left alone: changing the anchor would change more than what was asked.
 */
import type { Cursor } from './cursor.ts';
import { columnOf, contentEnd, lastLineEnd, lineEnd, lineStart, newlineOf, nextLine } from './lines.ts';
import type { MapNode, PairNode, Part, ScalarNode } from './nodes.ts';

/** One replacement inside a part. */
export interface PartEdit {
  readonly part: Part;
  readonly start: number;
  readonly end: number;
  readonly newText: string;
}

/** Replaces a scalar, its quotes included; an empty value is filled in. @param newText one line of YAML */
export function replaceScalar(at: Cursor, newText: string): PartEdit | undefined {
  const { node, part } = at;
  if (at.via !== undefined || node.kind !== 'scalar') return undefined;
  if (node.start === node.end) return fillIn(part, node, newText);
  return { part, start: node.start, end: contentEnd(part, node), newText };
}

/** Replaces a stretch inside a scalar's text, such as its unit. `from` and `to` count inside the text. */
export function replaceInScalar(at: Cursor, from: number, to: number, newText: string): PartEdit | undefined {
  if (at.via !== undefined || at.node.kind !== 'scalar' || at.node.textStart === undefined) return undefined;
  return { part: at.part, start: at.node.textStart + from, end: at.node.textStart + to, newText };
}

/** Adds `key: value` as the last pair of a map. @param value one line of YAML, flow style where it is a map or list */
export function appendPair(at: Cursor, key: string, value: string): PartEdit | undefined {
  const pair = value === '' ? `${key}:` : `${key}: ${value}`;
  const { node, part } = at;
  if (at.via !== undefined) return undefined;
  if (node.kind === 'scalar' && node.value === null) return replaceScalar(at, `{${pair}}`);
  if (node.kind !== 'map' || hasNoBraces(part, node)) return undefined;
  const last = node.pairs.at(-1);
  if (node.flow) return appendToFlow(part, node, last, pair);
  return last === undefined ? undefined : appendLine(part, last.key.start, last.value.end, pair);
}

/** Removes a pair with its line, or with its comma. */
export function removePair(at: Cursor, key: string): PartEdit | undefined {
  const { node, part } = at;
  if (at.via !== undefined || node.kind !== 'map' || hasNoBraces(part, node)) return undefined;
  const index = node.pairs.findIndex((pair) => pair.key.text === key);
  const pair = node.pairs[index];
  if (pair === undefined) return undefined;
  const [previous, next] = [node.pairs[index - 1], node.pairs[index + 1]];
  const onOwnLine = part.text.slice(lineStart(part, pair.key.start), pair.key.start).trim() === '';
  if (!node.flow && onOwnLine) return removeLines(part, pair.key.start, pair.value.end);
  if (next !== undefined) return { part, start: pair.key.start, end: next.key.start, newText: '' };
  if (previous !== undefined) return { part, start: previous.value.end, end: pair.value.end, newText: '' };
  return { part, start: node.start, end: node.end, newText: '{}' };
}

/** Renames a key where it stands. */
export function renameKey(part: Part, pair: Pick<PairNode, 'key'>, name: string): PartEdit {
  return { part, start: pair.key.start, end: pair.key.end, newText: name };
}

/** Adds a line below a value of a block map or list, at the column of its neighbour. */
export function appendLine(part: Part, neighbourStart: number, valueEnd: number, content: string): PartEdit {
  const at = lastLineEnd(part, valueEnd);
  const indent = ' '.repeat(columnOf(part, neighbourStart));
  return { part, start: at, end: at, newText: `${newlineOf(part)}${indent}${content}` };
}

/**
 * Removes the lines of something that starts on a line of its own, with the comments below that stand deeper: a block
 * scalar above would take them in.
 */
export function removeLines(part: Part, contentStart: number, valueEnd: number): PartEdit {
  const column = columnOf(part, contentStart);
  let end = nextLine(part, lastLineEnd(part, valueEnd));
  for (let line = end; line < part.text.length; line = nextLine(part, lineEnd(part, line))) {
    const content = part.text.slice(line, lineEnd(part, line));
    const inner = content.trimStart();
    const isDeeper = content.length - inner.length > column;
    if (inner !== '' && !(isDeeper && inner.startsWith('#'))) break;
    if (isDeeper) end = nextLine(part, lineEnd(part, line));
  }
  return { part, start: lineStart(part, contentStart), end, newText: '' };
}

/** Adds an entry behind the last of a flow collection, with its comma. */
export function appendToFlowEnd(part: Part, lastEnd: number, closing: number, entry: string): PartEdit {
  const trailingComma = /^\s*,/.exec(part.text.slice(lastEnd, closing));
  const at = lastEnd + (trailingComma?.[0].length ?? 0);
  return { part, start: at, end: at, newText: trailingComma === null ? `, ${entry}` : ` ${entry}` };
}

function appendToFlow(part: Part, node: MapNode, last: PairNode | undefined, pair: string): PartEdit {
  if (last === undefined) return { part, start: node.start, end: node.end, newText: `{${pair}}` };
  return appendToFlowEnd(part, last.value.end, node.end, pair);
}

/** A single pair in a flow list is a map too. */
function hasNoBraces(part: Part, { flow, start }: MapNode): boolean {
  return flow && part.text.charAt(start) !== '{';
}

/** A key of a flow map that stands there without its colon has no place for a value. */
function fillIn(part: Part, { start, end, textStart }: ScalarNode, newText: string): PartEdit | undefined {
  if (textStart === undefined) return undefined;
  const before = /\s/.test(part.text.charAt(start - 1)) ? '' : ' ';
  const after = part.text.charAt(end) === '#' ? ' ' : '';
  return { part, start, end, newText: `${before}${newText}${after}` };
}
