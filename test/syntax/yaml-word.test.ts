import { expect, it } from 'vitest';
import { parsePart } from '../../server/src/syntax/parse-part.ts';
import { yamlWord } from '../../server/src/syntax/yaml-word.ts';

const PLAIN = ['kiln-2', 'K2-MT-101', '2K-101', '../kits/a.dewkit.yaml', 'kits/fennmoor.dewkit.yaml', 'A.1/b+c'];
const QUOTED = [
  '101',
  '1e3',
  '0x1F',
  '.5',
  'true',
  'Null',
  '.inf',
  '...',
  '',
  'my kits/a',
  'a: b',
  'a, b',
  '#1',
  '*a',
  '-',
  'it\\s',
  'ö',
  '"',
];

it.each([...PLAIN, ...QUOTED])('%s is read back as the same text, in braces and without', (text) => {
  for (const yaml of [`key: ${yamlWord(text)}\n`, `key: {key: ${yamlWord(text)}}\n`]) {
    const { root, problems } = parsePart([], yaml);
    const outer = root?.pairs[0]?.value;
    const inner = outer?.kind === 'map' ? outer.pairs[0]?.value : outer;
    expect(inner?.kind === 'scalar' && inner.value).toBe(text);
    expect(problems).toEqual([]);
  }
});

it('what reads as itself is left without quotes', () => {
  expect(PLAIN.map(yamlWord)).toEqual(PLAIN);
  expect(QUOTED.map(yamlWord).every((word) => word.startsWith('"'))).toBe(true);
});
