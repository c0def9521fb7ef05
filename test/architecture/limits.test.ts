import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { importsOf, PROJECT, sourcesIn } from './source-imports.ts';

/** Whoever tells a user something: they ask a limit, and compare nothing themselves. */
const OUTLETS = ['rules', 'handover', 'report', 'features', 'views', 'pictures', 'cli', 'lsp'];

const FILES = OUTLETS.flatMap((room) => sourcesIn(`server/src/${room}`));

/**
 * The value of a fact beside a comparison: `margin.value < 0`, `8 >= rise.value`, `value < 0`. What a file says is
 * `located.value.value`, and nothing is rounded on the way there; a length above nothing is no limit.
 */
const COMPARED = [/(?<![.\w])(?:\w+\.)*(?<!\.value\.)value [<>]=? (?!\{)/, /(?<!=)[<>]=? \w+\??\.value\b(?!\.value)/];

function comparisonsIn(text: string): readonly string[] {
  return text.split('\n').filter((line) => COMPARED.some((pattern) => pattern.test(line)));
}

it.each(['if (margin.value < 0) {', 'return limit >= humidity.value;', 'const isWet = value > limit;'])(
  'sees the comparison in %s',
  (line) => {
    expect(comparisonsIn(line)).toEqual([line]);
  },
);

it.each(['if (insulation.value.value <= 0) {', 'const value = a < b ? fact.value : 0;'])(
  'sees no comparison of a fact in %s',
  (line) => {
    expect(comparisonsIn(line)).toEqual([]);
  },
);

it('no outlet compares a fact with a limit by itself: the limits stand beside the facts', () => {
  const compared = FILES.flatMap((file) =>
    comparisonsIn(readFileSync(join(PROJECT, file), 'utf8')).map((line) => `${file}: ${line.trim()}`),
  );
  expect(compared).toEqual([]);
});

it('no outlet rounds in a comparison of its own', () => {
  const rounding = FILES.flatMap(importsOf).filter(({ from }) => from.endsWith('base/rounding.ts'));
  expect(rounding).toEqual([]);
});
