/**
 * The smallest text changes that add, replace or remove something, in the style the author used. A place that is
 * seen through an alias is left alone: changing the anchor would change more than what was asked.
 */
import type { Cursor } from './cursor.ts';
import type { MapNode, PairNode, Part } from './nodes.ts';

/** One replacement inside a part. */
export interface PartEdit {
  readonly part: Part;
  readonly start: number;
  readonly end: number;
  readonly newText: string;
}

export function replaceScalar(at: Cursor, newText: string): PartEdit | undefined {
  if (at.via !== undefined || at.node.kind !== 'scalar') return undefined;
  const { start, end } = at.node;
  const needsSpace = start === end && at.part.text[start - 1] === ':';
  return { part: at.part, start, end, newText: needsSpace ? ` ${newText}` : newText };
}

/** Replaces a stretch inside a scalar's text, such as its unit. `from` and `to` count inside the text. */
export function replaceInScalar(at: Cursor, from: number, to: number, newText: string): PartEdit | undefined {
  if (at.via !== undefined || at.node.kind !== 'scalar' || at.node.textStart === undefined) return undefined;
  return { part: at.part, start: at.node.textStart + from, end: at.node.textStart + to, newText };
}

/** Adds `key: value` as the last pair of a map. @param value one line of YAML, flow style where it is a map or list */
export function appendPair(at: Cursor, key: string, value: string): PartEdit | undefined {
  const pair = value === '' ? `${key}:` : `${key}: ${value}`;
  if (at.via !== undefined) return undefined;
  const { node, part } = at;
  if (node.kind === 'scalar' && node.value === null) return replaceScalar(at, `{${pair}}`);
  if (node.kind !== 'map') return undefined;
  const last = node.pairs.at(-1);
  if (node.flow) return appendToFlow(part, node, last, pair);
  if (last === undefined) return undefined;
  const indent = ' '.repeat(columnOf(part, last.key.start));
  const insertAt = lineEnd(part, last.value.end);
  return { part, start: insertAt, end: insertAt, newText: `${newlineOf(part)}${indent}${pair}` };
}

/** Removes a pair with its line, or with its comma. */
export function removePair(at: Cursor, key: string): PartEdit | undefined {
  const { node, part } = at;
  if (at.via !== undefined || node.kind !== 'map') return undefined;
  const index = node.pairs.findIndex((pair) => pair.key.text === key);
  const pair = node.pairs[index];
  if (pair === undefined) return undefined;
  if (!node.flow) {
    const start = part.text.lastIndexOf('\n', pair.key.start - 1) + 1;
    const end = lineEnd(part, pair.value.end);
    const withNewline = part.text.startsWith('\r\n', end) ? end + 2 : Math.min(end + 1, part.text.length);
    return { part, start, end: withNewline, newText: '' };
  }
  const next = node.pairs[index + 1];
  const previous = node.pairs[index - 1];
  if (next !== undefined) return { part, start: pair.key.start, end: next.key.start, newText: '' };
  return {
    part,
    start: previous === undefined ? pair.key.start : previous.value.end,
    end: pair.value.end,
    newText: '',
  };
}

/** Renames a key where it stands. */
export function renameKey(part: Part, pair: Pick<PairNode, 'key'>, name: string): PartEdit {
  return { part, start: pair.key.start, end: pair.key.end, newText: name };
}

/** The column of an offset, from 0. */
export function columnOf(part: Part, offset: number): number {
  return offset - (part.text.lastIndexOf('\n', offset - 1) + 1);
}

function appendToFlow(part: Part, node: MapNode, last: PairNode | undefined, pair: string): PartEdit {
  if (last === undefined) return { part, start: node.start, end: node.end, newText: `{${pair}}` };
  const at = last.value.end;
  const trailingComma = /^\s*,/.exec(part.text.slice(at, node.end));
  const start = at + (trailingComma?.[0].length ?? 0);
  return { part, start, end: start, newText: trailingComma === null ? `, ${pair}` : ` ${pair}` };
}

/** The end of the line on which a value ends; a block scalar ends at the start of the line after it. */
function lineEnd(part: Part, valueEnd: number): number {
  const { text } = part;
  const inside = valueEnd > 0 && text[valueEnd - 1] === '\n' ? valueEnd - 1 : valueEnd;
  if (inside < valueEnd) return text[inside - 1] === '\r' ? inside - 1 : inside;
  const newline = text.indexOf('\n', inside);
  if (newline < 0) return text.length;
  return text[newline - 1] === '\r' ? newline - 1 : newline;
}

function newlineOf(part: Part): string {
  return part.text.includes('\r\n') ? '\r\n' : '\n';
}
