import { expect, it } from 'vitest';
import { lineIndexOf } from '../../server/src/base/line-index.ts';
import { applyEdits, textRange } from '../../server/src/base/text-range.ts';

it('lines end at LF, CRLF and a lone CR, and positions come back to their offsets', () => {
  const text = 'a\nbc\r\nd\re';
  const lines = lineIndexOf(text);
  expect(lines.lineCount).toBe(4);
  expect([0, 2, 6, 8].map((offset) => lines.positionAt(offset))).toEqual([
    { line: 0, character: 0 },
    { line: 1, character: 0 },
    { line: 2, character: 0 },
    { line: 3, character: 0 },
  ]);
  for (let offset = 0; offset <= text.length; offset++) {
    expect(lines.offsetAt(lines.positionAt(offset))).toBe(offset);
  }
});

it('edits apply in order of place, insertions at one place in the order given', () => {
  const edits = [
    { range: textRange(3, 3), newText: 'X' },
    { range: textRange(0, 1), newText: 'b' },
    { range: textRange(3, 3), newText: 'Y' },
  ];
  expect(applyEdits('aaa', edits)).toBe('baaXY');
});
