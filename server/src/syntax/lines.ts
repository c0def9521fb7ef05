/** Lines inside a part, for edits. */
import type { TextRange } from '../base/text-range.ts';
import type { Part } from './nodes.ts';

export function lineStart(part: Part, offset: number): number {
  return part.text.lastIndexOf('\n', offset - 1) + 1;
}

/** The column of an offset, from 0. */
export function columnOf(part: Part, offset: number): number {
  return offset - lineStart(part, offset);
}

/** The end of the line on which a value ends; a block scalar ends at the start of the line after it. */
export function lineEnd(part: Part, valueEnd: number): number {
  const { text } = part;
  const newline = text.indexOf('\n', text.charAt(valueEnd - 1) === '\n' ? valueEnd - 1 : valueEnd);
  if (newline < 0) return text.length;
  return text.charAt(newline - 1) === '\r' ? newline - 1 : newline;
}

/** The end of a value without the line ends that a block scalar takes in. */
export function contentEnd(part: Part, { start, end }: TextRange): number {
  return start + part.text.slice(start, end).trimEnd().length;
}

/** How the part ends its lines. */
export function newlineOf(part: Part): string {
  return part.text.includes('\r\n') ? '\r\n' : '\n';
}
