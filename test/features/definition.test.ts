import { describe, expect, it } from 'vitest';
import { definitionAt, fileLinks, highlightsAt, referencesAt } from '../../server/src/features/moving/definition.ts';
import { cursorIn, FENNMOOR, KIT, SITE, VISIT } from './fennmoor.ts';
import { type Marked, openAt, shown } from './marked-files.ts';

const site = (words: string): Marked => openAt('fennmoor.dewsite.yaml', cursorIn(SITE, words), FENNMOOR);
const kit = (words: string): Marked => openAt('kits/fennmoor.dewkit.yaml', cursorIn(KIT, words), FENNMOOR);
const visit = (words: string): Marked => openAt('first.dewvisit.yaml', cursorIn(VISIT, words), FENNMOOR);

const ANCHORS = `dewright: 1
site: {id: a}
spaces:
  one:
    air: &warm {temperature: 20 .. 30 degC, humidity: 30 .. 50 %RH}
  two:
    air: *warm
  three:
    air: &warm {temperature: 40 .. 50 degC, humidity: 30 .. 50 %RH}
  four:
    air: *warm
`;

describe('the definition of', () => {
  it.each([
    ['a space, from its point', site('space: kil|n-2'), 'fennmoor.dewsite.yaml:7 kiln-2'],
    ['a humidity probe model', site('model: |hp-heated'), 'kits/fennmoor.dewkit.yaml:4 hp-heated'],
    ['a temperature probe model', site('tp-sl|im'), 'kits/fennmoor.dewkit.yaml:23 tp-slim'],
    ['a receiver', site('plc-|ai'), 'kits/fennmoor.dewkit.yaml:27 plc-ai'],
    ['a kit, by its path', site('kits/|fennmoor'), 'kits/fennmoor.dewkit.yaml:2 fennmoor'],
    ['a point that lends its air probe', site('air-temperature: K2-|MT-101'), 'fennmoor.dewsite.yaml:18 K2-MT-101'],
    ['a point, from a visit', visit('point: K2|-MT-101'), 'fennmoor.dewsite.yaml:18 K2-MT-101'],
    ['a site, from a visit', visit('site: fenn|moor'), 'fennmoor.dewsite.yaml:3 fennmoor'],
    ['a name, on itself', site('  kiln|-2:'), 'fennmoor.dewsite.yaml:7 kiln-2'],
  ])('%s', (_, { workspace, parsed, offset }, expected) => {
    const found = definitionAt(workspace, parsed, offset);
    expect(found && shown(workspace, found.file, found.range)).toBe(expected);
  });

  it.each([
    ['a word that names nothing', site('mode: contin|uous')],
    ['a probe of the point itself', site('air-temperature: air-temp|erature-probe')],
    ['a recording', visit('logs/kiln|-2.csv')],
  ])('%s is not to be found', (_, { workspace, parsed, offset }) => {
    expect(definitionAt(workspace, parsed, offset)).toBeUndefined();
  });

  it('an alias is the last anchor of its name above it', () => {
    const first = openAt('a.dewsite.yaml', cursorIn(ANCHORS, '*wa|rm'));
    expect(definitionAt(first.workspace, first.parsed, first.offset)?.range.start).toBe(ANCHORS.indexOf('&warm') + 1);
    const last = openAt('a.dewsite.yaml', `${ANCHORS.trimEnd()}|\n`);
    expect(definitionAt(last.workspace, last.parsed, last.offset)?.range.start).toBe(ANCHORS.lastIndexOf('&warm') + 1);
  });
});

describe('references', () => {
  it.each([
    ['of a space', site('  kiln|-2:'), ['fennmoor.dewsite.yaml:20 kiln-2', 'fennmoor.dewsite.yaml:34 kiln-2']],
    [
      'of a model, from its kit',
      kit('  hp-|heated:'),
      ['fennmoor.dewsite.yaml:22 hp-heated', 'fennmoor.dewsite.yaml:35 hp-heated'],
    ],
    [
      'of a point, in site and visit',
      site('  K2-MT|-101:'),
      ['fennmoor.dewsite.yaml:37 K2-MT-101', 'first.dewvisit.yaml:4 K2-MT-101'],
    ],
    ['of a kit, from its id', kit('{id: fenn|moor'), ['fennmoor.dewsite.yaml:5 kits/fennmoor.dewkit.yaml']],
    ['of a site', site('  id: fenn|moor'), ['first.dewvisit.yaml:2 fennmoor']],
    [
      'of a model that no kit has',
      openAt('b.dewsite.yaml', 'points:\n  A:\n    humidity-probe: {model: x|}\n'),
      ['b.dewsite.yaml:3 x'],
    ],
  ])('%s', (_, { workspace, parsed, offset }, expected) => {
    const found = referencesAt(workspace, parsed, offset, false);
    expect(found.map(({ file, range }) => shown(workspace, file, range))).toEqual(expected);
  });

  it('of an anchor are its aliases up to the next anchor of the name, in its own file', () => {
    const { workspace, parsed, offset } = openAt('a.dewsite.yaml', cursorIn(ANCHORS, '*wa|rm'));
    const found = highlightsAt(workspace, parsed, offset);
    expect(found.map(({ file, range, role }) => `${role} ${shown(workspace, file, range)}`)).toEqual([
      'definition a.dewsite.yaml:5 warm',
      'reference a.dewsite.yaml:7 warm',
    ]);
  });

  it('do not mix two sites that give one id', () => {
    const other = 'site: {id: other}\nspaces:\n  kiln-2: {}\npoints:\n  O-1: {space: kiln-2}\n';
    const { workspace, parsed, offset } = openAt('fennmoor.dewsite.yaml', cursorIn(SITE, 'space: kil|n-2'), {
      ...FENNMOOR,
      'other.dewsite.yaml': other,
    });
    const files = referencesAt(workspace, parsed, offset, true).map(({ file }) => file);
    expect(new Set(files)).toEqual(new Set(['file:///fennmoor.dewsite.yaml']));
  });
});

it('the kits of a site and the recording of a visit are links', () => {
  const links = [...fileLinks(site('dewright').parsed), ...fileLinks(visit('dewright').parsed)];
  expect(links.map(({ target }) => target)).toEqual(['file:///kits/fennmoor.dewkit.yaml', 'file:///logs/kiln-2.csv']);
});
