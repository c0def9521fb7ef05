import { describe, expect, it } from 'vitest';
import { typingPlace } from '../../server/src/features/writing/completion/typing-place.ts';
import { openAt } from './marked-files.ts';

/** `points/A-1 key "sp" beside title, reports`, for a site with one point that holds the lines. */
function placeIn(text: string): string | undefined {
  const { parsed, offset, text: bare } = openAt('a.dewsite.yaml', text);
  const place = typingPlace(parsed, offset);
  if (place === undefined) return undefined;
  const { path, role, word, before, siblings, items, inFlow } = place;
  const beside = role === 'value' && items.length > 0 ? items : [...siblings.keys()];
  return [
    `${path.join('/')} ${role} "${before}${bare.slice(word.start, word.end)}"`,
    beside.length === 0 ? '' : ` beside ${beside.join(', ')}`,
    inFlow ? ' in flow' : '',
  ].join('');
}

describe('the place of typing', () => {
  it.each([
    [
      'a key of an entry',
      'points:\n  A-1:\n    title: x\n    sp|\n    reports: {}\n',
      'points/A-1 key "sp" beside title, reports',
    ],
    ['an empty line of an entry', 'points:\n  A-1:\n    title: x\n    |\n', 'points/A-1 key "" beside title'],
    [
      'an empty line further out',
      'points:\n  A-1:\n    heater:\n      mode: off\n    |\n',
      'points/A-1 key "" beside heater',
    ],
    ['an empty line for an entry', 'points:\n  A-1:\n    title: x\n  |\n', 'points key "" beside A-1'],
    ['the first entry', 'points:\n  |\n', 'points key ""'],
    ['the first key of an entry', 'points:\n  A-1:\n    |\n    title: x\n', 'points/A-1 key "" beside title'],
    [
      'a value',
      'points:\n  A-1:\n    title: x\n    space: ki|ln\n',
      'points/A-1/space value "kiln" beside title, space',
    ],
    ['a value without its blank', 'points:\n  A-1:\n    space:|\n', 'points/A-1/space value "" beside space'],
    ['a unit', 'points:\n  A-1:\n    span: 0 .. 100 %|\n', 'points/A-1/span value "0 .. 100 %" beside span'],
    [
      'a key in braces',
      'points:\n  A-1:\n    heater: {mode: off, |}\n',
      'points/A-1/heater key "" beside mode in flow',
    ],
    [
      'a key in open braces',
      'points:\n  A-1:\n    heater: {mode: off, ri|\n    title: x\n',
      'points/A-1/heater key "ri" beside mode in flow',
    ],
    [
      'a key before others in braces',
      'points:\n  A-1:\n    heater: {|, mode: off}\n',
      'points/A-1/heater key "" beside mode in flow',
    ],
    [
      'a value in open braces',
      'points:\n  A-1:\n    heater: {mode: |\n    title: x\n',
      'points/A-1/heater/mode value "" beside mode in flow',
    ],
    [
      'an item in brackets',
      'points:\n  A-1:\n    salts: [NaCl, |]\n',
      'points/A-1/salts/1 value "" beside NaCl in flow',
    ],
    [
      'an item on its own line',
      'site:\n  kits:\n    - a.dewkit.yaml\n    - |\n',
      'site/kits/1 value "" beside a.dewkit.yaml',
    ],
    [
      'braces in braces',
      'points:\n  A-1:\n    supply: {voltage: 24 V, cable: {length: 6 m, |\n',
      'points/A-1/supply/cable key "" beside length in flow',
    ],
    ['a key in brackets of braces', 'readings:\n  - {point: A-1, |\n', 'readings/0 key "" beside point in flow'],
    ['a key of an item', 'readings:\n  - point: A-1\n    |\n', 'readings/0 key "" beside point'],
    ['in quotes', 'points:\n  A-1:\n    space: "ki|\n', 'points/A-1/space value "ki" beside space'],
    ['the top level', 'dewright: 1\nsi|\n', ' key "si" beside dewright'],
    [
      'the top level below entries',
      'dewright: 1\nspaces:\n  one:\n    title: x\np|\n',
      ' key "p" beside dewright, spaces',
    ],
    ['a key that is there', 'points:\n  A-1:\n    sp|ace: x\n    title: y\n', 'points/A-1 key "space" beside title'],
  ])('%s', (_, text, expected) => {
    expect(placeIn(text)).toBe(expected);
  });

  it('is none in a comment, nor in words that go on', () => {
    expect(placeIn('points:\n  A-1:\n    title: x # ki|\n')).toBeUndefined();
    expect(placeIn('points:\n  A-1:\n    title: one\n      two|\n')?.startsWith('points/A-1/title value')).toBe(true);
  });

  it('survives a bracket that is open above in another entry', () => {
    const text = 'points:\n  A-1:\n    heater: {mode: off,\n    title: x\n  A-2:\n    space: hall\n    |\n';
    expect(placeIn(text)).toBe('points/A-2 key "" beside space');
  });
});
