/** A half-open stretch of text, in UTF-16 units from a stated start. */
export interface TextRange {
  readonly start: number;
  readonly end: number;
}

export function textRange(start: number, end: number): TextRange {
  return { start, end };
}

export function shiftRange(range: TextRange, by: number): TextRange {
  return { start: range.start + by, end: range.end + by };
}

/** True where the offset lies inside the range or at either edge, which is what a cursor means. */
export function touches(range: TextRange, offset: number): boolean {
  return offset >= range.start && offset <= range.end;
}

export function overlaps(one: TextRange, other: TextRange): boolean {
  return one.start <= other.end && other.start <= one.end;
}

/** One replacement in a text. */
export interface TextEdit {
  readonly range: TextRange;
  readonly newText: string;
}

/** Applies edits that do not overlap; where several insert at one place, they go in the order given. */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  const ordered = edits.map((edit, order) => ({ edit, order }));
  ordered.sort((a, b) => a.edit.range.start - b.edit.range.start || a.order - b.order);
  const pieces: string[] = [];
  let from = 0;
  for (const { edit } of ordered) {
    if (edit.range.start < from) throw new RangeError('edits overlap');
    pieces.push(text.slice(from, edit.range.start), edit.newText);
    from = edit.range.end;
  }
  pieces.push(text.slice(from));
  return pieces.join('');
}
