/** The smallest text changes that add an item to a list or remove one. */
import type { Cursor } from './cursor.ts';
import { appendLine, appendToFlowEnd, type PartEdit, removeLines, replaceScalar } from './edit.ts';
import { lineStart } from './lines.ts';

/** Adds an item as the last of a list. @param item one line of YAML */
export function appendItem(at: Cursor, item: string): PartEdit | undefined {
  const { node, part } = at;
  if (at.via !== undefined) return undefined;
  if (node.kind === 'scalar' && node.value === null) return replaceScalar(at, `[${item}]`);
  if (node.kind !== 'list') return undefined;
  const last = node.items.at(-1);
  if (node.flow && last === undefined) return { part, start: node.start, end: node.end, newText: `[${item}]` };
  if (last === undefined) return undefined;
  if (node.flow) return appendToFlowEnd(part, last.end, node.end, item);
  return appendLine(part, dashBefore(part.text, last.start), last.end, `- ${item}`);
}

/** Removes an item with its line, or with its comma. @param start where the item starts in the part */
export function removeItem(at: Cursor, start: number): PartEdit | undefined {
  const { node, part } = at;
  if (at.via !== undefined || node.kind !== 'list') return undefined;
  const index = node.items.findIndex((item) => item.start === start);
  const item = node.items[index];
  if (item === undefined) return undefined;
  const [previous, next] = [node.items[index - 1], node.items[index + 1]];
  if (previous === undefined && next === undefined) return { part, start: node.start, end: node.end, newText: '[]' };
  const dash = dashBefore(part.text, item.start);
  const onOwnLine = part.text.slice(lineStart(part, dash), dash).trim() === '';
  if (!node.flow && onOwnLine) return removeLines(part, dash, item.end);
  if (next !== undefined) return { part, start: item.start, end: next.start, newText: '' };
  return { part, start: previous?.end ?? item.start, end: item.end, newText: '' };
}

/** The dash of an item, which may stand on a line above it or before its anchor. */
function dashBefore(text: string, itemStart: number): number {
  let at = itemStart - 1;
  while (at > 0 && !(text.charAt(at) === '-' && /\s/.test(text.charAt(at + 1)))) at--;
  return at;
}
