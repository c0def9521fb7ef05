import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parsePart } from '../../server/src/syntax/parse-part.ts';
import { documents } from './documents.ts';

describe('what is wrong is said once, where it is', () => {
  it.each([
    [
      'a bracket left open',
      'a: {b: 1\nc: 2\n',
      'A bracket opened above is still open here, or this line stands no deeper than the key it belongs to',
    ],
    [
      'a comma left out',
      'a: {b: 1 c: 2}\n',
      'Inside { } and [ ] a comma stands between two entries, and one is missing here',
    ],
    [
      'a blank left out',
      'a:1\nb: 2\n',
      'A key goes over more than one line; a colon with a blank behind it, or a quote, is missing',
    ],
    ['a quote left open', 'a: "b\n', 'A closing quote, bracket, comma or colon is missing'],
    ['a tab as indentation', 'a:\n\tb: 1\n', 'A tab indents this line; YAML is indented with spaces'],
    ['a line out of line', 'a:\n   b: 1\n  c: 2\n', 'This line is not indented as its neighbours are'],
    [
      'a second colon',
      'a: b: 1\n',
      'A key and a second colon stand on one line; put the inner value in quotes or on a line of its own',
    ],
    [
      'an unknown escape',
      'a: "\\d"\n',
      'A backslash in double quotes starts an escape that is not known; single quotes take it as it is',
    ],
    [
      'a value that starts with a percent sign',
      'a: @b\n',
      'A value cannot start with this character; put it in quotes',
    ],
    ['a second document', 'a: 1\n---\nb: 2\n', 'A file holds one YAML document, and a second one starts here'],
    [
      'a list where keys are expected',
      '- a\n',
      'A file starts with keys such as “dewright:” and “site:”, and this is none',
    ],
    ['a key that is a list', '? [a]\n: 1\n', 'A key is one plain word here, not a list, a map or an alias'],
    ['a tag of another language', 'a: !ruby/sym b\n', 'This tag is not known; values here need no tags'],
    ['an alias inside its own anchor', 'a: &x {b: *x}\n', 'The alias “*x” stands inside its own anchor'],
  ])('%s', (_, text, sentence) => {
    expect(parsePart([], text).problems.map((problem) => problem.sentence)).toEqual([sentence]);
  });

  it('a key given twice points at the first', () => {
    const text = 'a: 1\nb: 2\na: 3\n';
    const [problem] = parsePart([], text).problems;
    expect(problem).toEqual({
      sentence: '“a” is given twice; the first one counts',
      start: 10,
      end: 11,
      related: expect.objectContaining({ start: 0, end: 1 }),
    });
  });

  it.each([
    ['brackets', `a: ${'['.repeat(200_000)}`],
    ['maps in brackets', `a: ${'{b: '.repeat(200_000)}`],
    ['dashes', `a:\n  ${'- '.repeat(100_000)}b`],
    ['keys', Array.from({ length: 2000 }, (_, depth) => `${' '.repeat(depth)}a:`).join('\n')],
  ])('%s nested beyond all reason are one problem', (_, text) => {
    const { problems, root } = parsePart([], text);
    expect(root).toBeUndefined();
    expect(problems.map(({ sentence }) => sentence)).toEqual(['The text is nested too deeply to be read']);
  });

  it('the deepest nesting that is handed on is read', () => {
    const keys = Array.from({ length: 199 }, (_, depth) => `${' '.repeat(depth)}a:`).join('\n');
    expect(parsePart([], `${keys} ${'['.repeat(100)}${']'.repeat(100)}\n`).problems).toEqual([]);
  });
});

describe('a decimal comma in a flow map', () => {
  it.each([
    ['{humidity: 0,5 %RH}', ['humidity', '0,5 %RH']],
    ['{humidity: 60,5 .. 80,5 %RH, speed: 2,5 m/s}', ['humidity', '60,5 .. 80,5 %RH', 'speed', '2,5 m/s']],
    ['{bits: 14, format: int16}', ['bits', '14', 'format', 'int16']],
    ['{bits: 14,format: int16}', ['bits', '14', 'format', 'int16']],
    ['{a: 1,5: 2}', ['a', '1', '5', '2']],
    ['{a: 1, 5}', ['a', '1', '5', '']],
    ['{a: "1",5}', ['a', '1', '5', '']],
  ])('%s', (text, expected) => {
    const pairs = parsePart([], text).root?.pairs ?? [];
    const read = pairs.flatMap(({ key, value }) => [key.text, value.kind === 'scalar' ? value.text : value.kind]);
    expect(read).toEqual(expected);
  });

  it('the joined value stands where it was typed', () => {
    const text = '{humidity: 0,5 %RH}';
    expect(parsePart([], text).root?.pairs[0]?.value).toMatchObject({ start: 11, end: 18, textStart: 11 });
  });
});

it('acceptance comments are found where they are comments, and nowhere else', () => {
  const text = 'a: "# accept x: no" # accept y: one\n# accept z: two\nb: |\n  # accept w: no\n';
  const found = parsePart([], text).acceptanceComments;
  expect(found.map((comment) => [comment.text, comment.alone])).toEqual([
    ['# accept y: one', false],
    ['# accept z: two', true],
  ]);
});

it('cut off anywhere, a document is still read', () => {
  fc.assert(
    fc.property(documents, fc.nat(), (text, length) => {
      const part = parsePart([], text.slice(0, length % (text.length + 1)));
      for (const { start, end } of part.problems) expect(start >= 0 && start <= end && end <= text.length).toBe(true);
    }),
    { numRuns: 1000 },
  );
});
