import { describe, expect, it } from 'vitest';
import { workspaceSymbols } from '../../server/src/features/moving/workspace-symbols.ts';
import { foldsOf } from '../../server/src/features/reading/folding.ts';
import { selectionAt } from '../../server/src/features/reading/selection.ts';
import { semanticTokens } from '../../server/src/features/reading/semantic-tokens.ts';
import { cursorIn, FENNMOOR, SITE } from './fennmoor.ts';
import { openAt, workspaceOf } from './marked-files.ts';

describe('folding', () => {
  const folded = (text: string): readonly string[] =>
    foldsOf(openAt('a.dewsite.yaml', `|${text}`).parsed).map(
      ({ firstLine, lastLine, kind }) => `${firstLine + 1}-${lastLine + 1} ${kind}`,
    );

  it('takes in maps, lists, entries and their sections', () => {
    const text =
      'dewright: 1\nspaces:\n  one:\n    air:\n      temperature: 1 .. 2 degC\n  two:\n    exposure:\n      - dust\n';
    expect(folded(text)).toEqual(['2-8 value', '3-5 value', '4-5 value', '6-8 value', '7-8 value']);
  });

  it('takes in brackets over several lines, texts and comments', () => {
    const text = 'site:\n  kits: [\n    a,\n    b\n  ]\n  title: |\n    one\n    two\n# first\n# second\n# third\n';
    expect(folded(text)).toEqual(['9-11 comment', '1-8 value', '2-5 value', '6-8 value']);
  });

  it('leaves single lines alone', () => {
    expect(folded('dewright: 1\nsite: {id: a}\n# one\n')).toEqual([]);
  });
});

describe('the selection grows', () => {
  const grown = (words: string): readonly string[] => {
    const { parsed, text, offset } = openAt('fennmoor.dewsite.yaml', cursorIn(SITE, words), FENNMOOR);
    return selectionAt(parsed, offset).map(({ start, end }) => text.slice(start, end));
  };

  it('from the numbers of a value to the file', () => {
    const ranges = grown('humidity: 3|5 .. 88');
    expect(ranges.slice(0, 3)).toEqual(['35 .. 88', '35 .. 88 %RH', 'humidity: 35 .. 88 %RH']);
    expect(ranges[3]).toMatch(/^temperature: 55[\s\S]*speed: 2 \.\. 4 m\/s$/);
    expect(ranges[4]).toMatch(/^air:/);
    expect(ranges.at(-3)).toMatch(/^kiln-2:[\s\S]*acetic-acid\]$/);
    expect(ranges.at(-2)).toMatch(/^spaces:[\s\S]*18 degC\}$/);
    expect(ranges.at(-1)).toBe(SITE);
  });

  it('from a unit, and from a key', () => {
    expect(grown('88 %R|H')[0]).toBe('%RH');
    expect(grown('|humidity: 35').slice(0, 2)).toEqual(['humidity', 'humidity: 35 .. 88 %RH']);
  });

  it('each range lies inside the next', () => {
    for (const words of ['mode: contin|uous', '[acetic-|acid]', 'K2-MT|-102', 'dew|right: 1', 'AO|1']) {
      const { parsed, offset } = openAt('fennmoor.dewsite.yaml', cursorIn(SITE, words), FENNMOOR);
      const ranges = selectionAt(parsed, offset);
      expect(ranges.length).toBeGreaterThan(1);
      for (const [index, range] of ranges.slice(1).entries()) {
        expect(range.start).toBeLessThanOrEqual(ranges[index]?.start ?? -1);
        expect(range.end).toBeGreaterThanOrEqual(ranges[index]?.end ?? Number.MAX_VALUE);
      }
    }
  });
});

describe('semantic tokens', () => {
  it('tell numbers, units, quantities, names given and names used apart', () => {
    const text =
      'points:\n  A-1:\n    space: hall\n    reports:\n      dew-point: {tolerance: 0.8 K}\n      wet-bulb: {air-temperature: 60 degC}\n    alarms:\n      wet: {quantity: dew-point, above: 30 degC}\n';
    const { parsed } = openAt('a.dewsite.yaml', `|${text}`);
    const tokens = semanticTokens(parsed).map(({ kind, range }) => `${kind} ${text.slice(range.start, range.end)}`);
    expect(tokens).toEqual([
      'given-name A-1',
      'name hall',
      'quantity dew-point',
      'value 0.8',
      'unit K',
      'quantity wet-bulb',
      'value 60',
      'unit degC',
      'quantity dew-point',
      'value 30',
      'unit degC',
    ]);
  });

  it('of a stretch are those of the parts that it touches', () => {
    const { parsed, offset } = openAt('fennmoor.dewsite.yaml', cursorIn(SITE, '  K2-MT|-102:'), FENNMOOR);
    const all = semanticTokens(parsed);
    const some = semanticTokens(parsed, { start: offset, end: offset });
    expect(some).toEqual(all.slice(-some.length));
    expect(some.length).toBeLessThan(all.length);
  });
});

describe('symbols of the workspace', () => {
  const workspace = workspaceOf(FENNMOOR);
  it.each([
    ['K2MT', ['point K2-MT-101', 'point K2-MT-102']],
    ['green oak', ['space kiln-2']],
    ['heated', ['model hp-heated']],
    ['timber', ['site fennmoor']],
    ['nothing of the kind', []],
  ])('%s', (query, expected) => {
    expect(workspaceSymbols(workspace, query).map(({ kind, name }) => `${kind} ${name}`)).toEqual(expected);
  });

  it('are all named where nothing is asked', () => {
    expect(workspaceSymbols(workspace, '')).toHaveLength(11);
  });
});
