/** Lines inside a part, for edits. */
import type { TextRange } from '../base/text-range.ts';
import type { Part } from './nodes.ts';

const BYTE_ORDER_MARK = 0xfeff;

export function lineStart({ text }: Part, offset: number): number {
  const start = offset === 0 ? 0 : text.lastIndexOf('\n', offset - 1) + 1;
  return start === 0 && text.charCodeAt(0) === BYTE_ORDER_MARK ? 1 : start;
}

/** The column of an offset, from 0. */
export function columnOf(part: Part, offset: number): number {
  return offset - lineStart(part, offset);
}

/** The end of the line on which an offset stands. */
export function lineEnd({ text }: Part, offset: number): number {
  const newline = text.indexOf('\n', offset);
  if (newline < 0) return text.length;
  return text.charAt(newline - 1) === '\r' ? newline - 1 : newline;
}

/** The end of the last line of a value; a block scalar takes in the end of its last line. */
export function lastLineEnd(part: Part, valueEnd: number): number {
  return lineEnd(part, part.text.charAt(valueEnd - 1) === '\n' ? valueEnd - 1 : valueEnd);
}

/** Where the line starts that follows an end of line. */
export function nextLine({ text }: Part, end: number): number {
  return text.startsWith('\r\n', end) ? end + 2 : Math.min(end + 1, text.length);
}

/** The end of a value without the line ends that a block scalar takes in. */
export function contentEnd(part: Part, { start, end }: TextRange): number {
  return start + part.text.slice(start, end).trimEnd().length;
}

/** How the part ends its lines. */
export function newlineOf(part: Part): string {
  return part.text.includes('\r\n') ? '\r\n' : '\n';
}
