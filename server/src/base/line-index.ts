/** Offsets to lines and back, both counted from 0 in UTF-16 units, as the Language Server Protocol counts them. */
export interface Position {
  readonly line: number;
  readonly character: number;
}

export interface LineIndex {
  readonly lineCount: number;
  positionAt(offset: number): Position;
  offsetAt(position: Position): number;
}

const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;

/** Lines end at LF, CRLF or a lone CR. */
export function lineIndexOf(text: string): LineIndex {
  const starts = lineStarts(text);
  const startOf = (line: number): number => starts[line] ?? text.length;
  return {
    lineCount: starts.length,
    positionAt(offset) {
      const clamped = Math.max(0, Math.min(offset, text.length));
      const line = lastAtOrBelow(starts, clamped);
      return { line, character: clamped - startOf(line) };
    },
    offsetAt({ line, character }) {
      if (line < 0) return 0;
      if (line >= starts.length) return text.length;
      const next = line + 1 < starts.length ? startOf(line + 1) : text.length;
      return Math.max(startOf(line), Math.min(startOf(line) + character, next));
    },
  };
}

function lineStarts(text: string): number[] {
  const starts = [0];
  for (let at = 0; at < text.length; at++) {
    const unit = text.charCodeAt(at);
    if (unit !== LINE_FEED && unit !== CARRIAGE_RETURN) continue;
    if (unit === CARRIAGE_RETURN && text.charCodeAt(at + 1) === LINE_FEED) at++;
    starts.push(at + 1);
  }
  return starts;
}

function lastAtOrBelow(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((starts[middle] ?? 0) <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
}
