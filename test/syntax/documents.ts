/** Random YAML documents made of what line-by-line readers stumble over. Many are legal; the others are skipped. */
import fc from 'fast-check';

type Text = fc.Arbitrary<string>;

const WORDS = fc.constantFrom(
  'a',
  'kiln-2',
  'warm',
  '12',
  '0.5',
  'true',
  '24 V',
  '-40 degC',
  '35 .. 88 %RH',
  'x#y',
  'a:b',
);
const KEYS = fc.constantFrom(
  'a',
  'b',
  'air',
  'K2-MT-101',
  '-x',
  'K 2',
  '"q: r"',
  "'it''s'",
  '"say \\"x\\""',
  'a#b',
  'a:b',
  '101',
);
const COMMENTS = fc.constantFrom('', '', '', ' # points:', ' # "', ' # {');
/** Lines that hold nothing, whatever their indentation. */
const GAPS = fc.constantFrom('', '', '', '\n', '\n   ', '\n# site: {', '\n      # b: 1', '\n # accept x: y');

/** A value behind a colon or dash whose own lines stand at least `indent` deep. */
function valueAt(indent: number, depth: number): Text {
  const pad = ' '.repeat(indent);
  const oneLine: Text = fc.oneof(
    WORDS,
    fc.constantFrom('"c: d # e"', "'f: {g'", '', '~', '*one', '*two', '[]', '{}', '"\\u00b0C"'),
  );
  const spread: Text = fc.constantFrom(
    `"open\n${pad}points: {\n\n${pad}close"`,
    `'open\n${pad}spaces:\n${pad}  it''s'`,
    `|\n${pad}points:\n${pad}  # no comment\n\n${pad}  a: 1`,
    `>-\n${pad}folded: [\n${pad}text`,
    `|+\n${pad}kept\n\n`,
    `plain words\n${pad}over lines`,
    `{a: 1,\n${pad}b: [x,\n${pad}  "y]"], # c: }\n${pad}c: {d: 'e'}}`,
    `[\n${pad}a: 1,\n${pad}{b: 2},\n${pad}]`,
    `{<<: *one, z: 1}`,
    `\n${pad}on: the next line`,
    `&one {p: 1, q: 2}`,
    `&two\n${pad}r: 3\n${pad}<<: *one`,
    `&one`,
  );
  const flat = fc.oneof(oneLine, spread);
  if (depth === 0) return fc.tuple(flat, COMMENTS).map(([value, comment]) => withComment(value, comment));
  const nested = fc.oneof(
    { weight: 3, arbitrary: flat },
    { weight: 2, arbitrary: fc.integer({ min: 0, max: 3 }).chain((more) => blockMapAt(indent + more, depth - 1)) },
    { weight: 1, arbitrary: fc.integer({ min: -1, max: 2 }).chain((more) => blockListAt(indent + more, depth - 1)) },
  );
  return fc.tuple(nested, COMMENTS).map(([value, comment]) => withComment(value, comment));
}

/** A comment needs an end of line that is not inside a value. */
function withComment(value: string, comment: string): string {
  return value.includes('\n') ? value : `${value}${comment}`;
}

function blockMapAt(indent: number, depth: number): Text {
  const pair = fc.tuple(KEYS, fc.constantFrom(':', ' :'), valueAt(indent + 1, depth), GAPS);
  return fc
    .uniqueArray(pair, { minLength: 1, maxLength: 3, selector: ([key]) => key })
    .map((pairs) =>
      pairs.map(([key, colon, value, gap]) => `\n${' '.repeat(indent)}${key}${colon}${behind(value)}${gap}`).join(''),
    );
}

/** A value that starts on the line of its key stands apart from it. */
function behind(value: string): string {
  return value.startsWith('\n') ? value : ` ${value}`;
}

function blockListAt(indent: number, depth: number): Text {
  const item = fc
    .tuple(valueAt(indent + 2, depth), GAPS)
    .map(([value, gap]) => `\n${' '.repeat(indent)}- ${value}${gap}`);
  return fc.array(item, { minLength: 1, maxLength: 3 }).map((items) => items.join(''));
}

const TOP_LEVEL_KEYS = fc.constantFrom('site', 'spaces', 'points', '"points"', 'other', '<<');

const topLevel = fc.tuple(
  TOP_LEVEL_KEYS,
  fc
    .integer({ min: 1, max: 4 })
    .chain((indent) =>
      fc.oneof({ weight: 3, arbitrary: blockMapAt(indent, 2) }, { weight: 1, arbitrary: valueAt(1, 2) }),
    ),
);

export const documents: Text = fc
  .tuple(
    fc.constantFrom('', '', '', '\ufeff', '---\n', '# head\n', '%YAML 1.2\n---\n'),
    fc.uniqueArray(topLevel, { minLength: 1, maxLength: 4, selector: ([key]) => key }),
    fc.constantFrom('\n', '', '\n\n', '\n...\n'),
    fc.boolean(),
  )
  .map(([head, entries, tail, crlf]) => {
    const body = entries.map(([key, value]) => `${key}:${behind(value)}`).join('\n');
    const text = `${head}${body}${tail}`;
    return crlf ? text.replace(/\n/g, '\r\n') : text;
  });
