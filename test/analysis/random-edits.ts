/** Random edits as a person makes them, and the traps: quotes, brackets, block scalars, indentation, anchors. */
import fc from 'fast-check';

export interface RandomEdit {
  /** Where, as a share of the text. */
  readonly at: number;
  /** How many characters go. */
  readonly removed: number;
  readonly added: string;
  /** True to work on whole lines: what is added is a copy of another line. */
  readonly line: boolean;
}

const TRAPS = [
  '"',
  "'",
  '{',
  '}',
  '[',
  ']',
  '|',
  '>',
  ':',
  ': ',
  '#',
  ' # ',
  '&a ',
  '*a',
  '<<: *a',
  '-',
  '- ',
  '? ',
  '\n',
  '\n  ',
  '\n    ',
  '\t',
  '\r\n',
  ',',
  '%',
  '---\n',
  '...\n',
  '!',
  '\u00a0',
  '\ufeff',
  'ä',
  '°C',
  '0',
  '9',
  ' ',
  '  ',
  'x',
  'K2',
  'points:\n',
  'spaces:\n',
  '# accept still-air: seen\n',
  'dewright: 1\n',
  '|\n',
  '>-\n',
  '"a\n',
  '{a: 1',
];

export const randomEdit: fc.Arbitrary<RandomEdit> = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  removed: fc.oneof(
    { weight: 6, arbitrary: fc.constant(0) },
    { weight: 3, arbitrary: fc.integer({ min: 1, max: 3 }) },
    { weight: 1, arbitrary: fc.integer({ min: 4, max: 200 }) },
  ),
  added: fc.oneof(
    { weight: 4, arbitrary: fc.constantFrom(...TRAPS) },
    { weight: 2, arbitrary: fc.constant('') },
    { weight: 1, arbitrary: fc.string({ maxLength: 6 }) },
  ),
  line: fc.boolean(),
});

export function applyRandomEdit(text: string, { at, removed, added, line }: RandomEdit): string {
  const offset = Math.min(text.length, Math.floor(at * (text.length + 1)));
  if (!line || added !== '') return text.slice(0, offset) + added + text.slice(offset + removed);
  const lines = text.split('\n');
  const index = Math.min(lines.length - 1, Math.floor(at * lines.length));
  const other = lines[(index * 7 + removed) % lines.length] ?? '';
  if (removed > 0) lines.splice(index, 1);
  else lines.splice(index, 0, other);
  return lines.join('\n');
}
