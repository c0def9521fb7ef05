import fc from 'fast-check';
import { expect, it } from 'vitest';
import { lineIndexOf } from '../../server/src/base/line-index.ts';
import { nearestWord } from '../../server/src/base/nearest.ts';
import { changeBetween } from '../../server/src/base/text-change.ts';
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

it('the change between two texts makes one of the other, and its ends differ', () => {
  const text = fc.string({ unit: fc.constantFrom('a', 'b'), maxLength: 40 });
  fc.assert(
    fc.property(text, text, (before, after) => {
      const { start, oldEnd, newEnd } = changeBetween(before, after) ?? { start: 0, oldEnd: 0, newEnd: 0 };
      expect(before.slice(0, start) + after.slice(start, newEnd) + before.slice(oldEnd)).toBe(after);
      if (start < Math.min(oldEnd, newEnd)) {
        expect(before[start]).not.toBe(after[start]);
        expect(before[oldEnd - 1]).not.toBe(after[newEnd - 1]);
      }
    }),
  );
});

it.each([
  ['presure', 'pressure', 1],
  ['thikcness', 'thickness', 1],
  ['Wall', 'wall', 0],
  ['gradeint', 'gradient', 1],
])('the word nearest to %s is %s, at a distance of %d', (typed, word, distance) => {
  expect(nearestWord(typed, ['pressure', 'thickness', 'wall', 'gradient'])).toEqual({ word, distance });
});

it('a word that is off by more than a third of its letters is near no other', () => {
  expect(nearestWord('walnut', ['wall', 'gradient'])).toBeUndefined();
});
