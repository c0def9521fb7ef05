import { describe, expect, it } from 'vitest';
import type { FileKind } from '../../server/src/model/schema.ts';
import { problemsOf, siteWithPoint, siteWithSpace } from './problems.ts';

const AIR = 'air: {temperature: 60 degC, humidity: 80 %RH}';

/** The text, the stretch that is marked, the sentence, the fixes. Each text has this one break and no other. */
type Row = readonly [what: string, text: string, marked: string, sentence: string, fixes: readonly string[]];

const BREAKS: readonly Row[] = [
  [
    'a key with one letter wrong',
    siteWithSpace(AIR, 'presure: 99 kPa'),
    'presure',
    '“presure” is no key of a space; the nearest is “pressure”',
    ['Change to “pressure” (safe)', 'Remove “presure”'],
  ],
  [
    'a key with more letters wrong',
    siteWithSpace(AIR, 'gradeint-x: 1 K/m'),
    'gradeint-x',
    '“gradeint-x” is no key of a space; the nearest is “gradient”',
    ['Change to “gradient”', 'Remove “gradeint-x”'],
  ],
  [
    'a key that is near no other',
    siteWithSpace(AIR, 'floor-area: 12'),
    'floor-area',
    '“floor-area” is no key of a space; known are “title”, “pressure”, “phases”, “gradient”, “wall”, “exposure”, “hazards”',
    ['Remove “floor-area”'],
  ],
  [
    'a key that a map inside has not',
    siteWithSpace(AIR, 'wall: {thikcness: 2 mm}'),
    'thikcness',
    '“thikcness” is no key of “wall”; the nearest is “thickness”',
    ['Change to “thickness” (safe)', 'Remove “thikcness”'],
  ],
  [
    'a needed key under a misspelt name',
    siteWithSpace('air: {temprature: 60 degC, humidity: 80 %RH}'),
    'temprature',
    '“temprature” is no key of “air”; the nearest is “temperature”',
    ['Change to “temperature” (safe)', 'Remove “temprature”'],
  ],
  [
    'a key to choose under a misspelt name',
    siteWithSpace('air: {temperature: 60 degC, humidty: 80 %RH}'),
    'humidty',
    '“humidty” is no key of “air”; the nearest is “humidity”',
    ['Change to “humidity” (safe)', 'Remove “humidty”'],
  ],
  [
    'a colon left out',
    siteWithSpace('air: {temperature: 60 degC, humidity 80 %RH}'),
    'humidity 80 %RH',
    'A colon is missing behind “humidity”',
    ['Write “humidity: 80 %RH” (safe)'],
  ],
  [
    'a text cut at its comma',
    siteWithPoint('checks: {interval: 6 months}').replace(
      '{id: fennmoor}',
      '{id: fennmoor, title: Fennmoor, mill, hall 2}',
    ),
    'mill',
    'In { } a comma ends a text, so that “Fennmoor, mill, hall 2” has to stand in quotes',
    ['Write "Fennmoor, mill, hall 2" (safe)'],
  ],
  [
    'a key of another kind of signal',
    siteWithPoint('signals: {AO1: {kind: voltage, quantity: dew-point, span: 0 .. 90 degC, address: 4}}'),
    'address',
    '“address” is no key of “AO1”; known are “voltage”, “receiver”',
    ['Remove “address”'],
  ],
  [
    'a needed key left out',
    siteWithPoint('humidity-probe: {serial: A1001}'),
    'humidity-probe',
    '“humidity-probe” needs the key “model”',
    ['Add “model:” to be filled in'],
  ],
  [
    'a needed key with few words left out',
    siteWithPoint('humidity-probe: {model: a, heater: {rise: 8 K}}'),
    'heater',
    '“heater” needs the key “mode”',
    ['Add “mode: off”', 'Add “mode: continuous”', 'Add “mode: on-demand”'],
  ],
  [
    'neither of two keys',
    siteWithSpace('title: Kiln 2'),
    'kiln-2',
    'The space “kiln-2” needs exactly one of “air”, “phases”, and has none',
    ['Add “air:” to be filled in', 'Add “phases:” to be filled in'],
  ],
  [
    'two keys where one belongs',
    siteWithSpace('air: {temperature: 60 degC, humidity: 80 %RH, dew-point: 50 degC}'),
    'air',
    '“air” takes exactly one of “humidity”, “dew-point”, “dew-point-depression”, “mixing-ratio”, and has “humidity” and “dew-point”',
    ['Remove “humidity”', 'Remove “dew-point”'],
  ],
  [
    'no kind where the kind decides',
    siteWithPoint('signals: {AO1: {quantity: dew-point, span: 0 .. 90 degC}}'),
    'AO1',
    '“AO1” needs the key “kind”, one of “current-loop”, “voltage”, “register”',
    ['Add “kind: current-loop”', 'Add “kind: voltage”', 'Add “kind: register”'],
  ],
  [
    'an unknown kind where the kind decides',
    siteWithPoint('signals: {AO1: {kind: voltge, quantity: dew-point, span: 0 .. 90 degC}}'),
    'voltge',
    '“kind” of “AO1” is one of “current-loop”, “voltage”, “register”, not “voltge”',
    ['Change to “voltage”'],
  ],
  [
    'a word with a letter wrong',
    siteWithPoint('humidity-probe: {model: a, mounting: {attitude: horisontal}}'),
    'horisontal',
    '“attitude” is one of “horizontal”, “head-up”, “head-down”, not “horisontal”',
    ['Change to “horizontal”'],
  ],
  [
    'a word that is none of a few',
    siteWithPoint('humidity-probe: {model: a, heater: {mode: active}}'),
    'active',
    '“mode” is one of “off”, “continuous”, “on-demand”, not “active”',
    ['Change to “off”', 'Change to “continuous”', 'Change to “on-demand”'],
  ],
  [
    'no word where one of a few belongs',
    siteWithPoint('humidity-probe: {model: a, heater: {mode: }}'),
    'mode',
    '“mode” is empty; it is one of “off”, “continuous”, “on-demand”',
    ['Write “off”', 'Write “continuous”', 'Write “on-demand”'],
  ],
  [
    'an item that is no known word',
    siteWithSpace(AIR, 'hazards: [hot-surfaces]'),
    'hot-surfaces',
    'An item of “hazards” cannot be “hot-surfaces”; the nearest word is “hot-surface”',
    ['Change to “hot-surface”'],
  ],
  [
    'a word that is none of many',
    siteWithSpace(AIR, 'wall: {material: straw}'),
    'straw',
    '“material” is one of “stainless-steel”, “carbon-steel”, “aluminium”, “copper”, “brass”, “brick”, “concrete”, “aerated-concrete” and more, not “straw”',
    [],
  ],
  [
    'an item twice',
    siteWithPoint('checks: {interval: 12 months, salts: [NaCl, KCl, NaCl]}'),
    'NaCl',
    '“salts” lists “NaCl” twice',
    ['Remove the second (safe)'],
  ],
  [
    'an unknown quantity',
    siteWithPoint('reports: {relative-humidty: {tolerance: 3 %RH}}'),
    'relative-humidty',
    '“relative-humidty” is not known here; the nearest is “relative-humidity”',
    ['Change to “relative-humidity” (safe)'],
  ],
  [
    'a tag with a blank',
    siteWithPoint().replace('K2-MT-101', 'K2 101'),
    'K2 101',
    '“K2 101” is not the tag of a measurement point as the plant uses it, without blanks, such as “K2-MT-101”',
    ['Change to “K2-101”'],
  ],
  [
    'a space with capitals in its name',
    siteWithSpace(AIR).replace('kiln-2', 'Kiln 2'),
    'Kiln 2',
    '“Kiln 2” is not a name of lower-case letters and digits, its words joined by hyphens, such as “kiln-2”',
    ['Change to “kiln-2”'],
  ],
  [
    'an id with capitals',
    'dewright: 1\nsite: {id: Fennmoor}\n',
    'Fennmoor',
    '“id” is written like “fennmoor”, not “Fennmoor”',
    ['Change to “fennmoor”'],
  ],
  [
    'an exposure in words',
    siteWithSpace(AIR, 'exposure: [Acetic acid]'),
    'Acetic acid',
    'An item of “exposure” is written like “wash-down”, “steam-cleaning”, “acetic-acid”, not “Acetic acid”',
    ['Change to “acetic-acid”'],
  ],
  [
    'a serial number that YAML reads as a number',
    siteWithPoint('humidity-probe: {model: a, serial: 0071}'),
    '0071',
    '“serial” takes a text such as “A1001”, not “0071”',
    ['Write "0071" (safe)'],
  ],
  [
    'one word where a list belongs',
    'dewright: 1\nsite: {id: fennmoor, kits: kits/a.dewkit.yaml}\n',
    'kits/a.dewkit.yaml',
    '“kits” takes a list, not “kits/a.dewkit.yaml”',
    ['Write [kits/a.dewkit.yaml] (safe)'],
  ],
  [
    'a number in quotes',
    'dewright: 1\nsite: {id: fennmoor, defaults: {coverage: "2"}}\n',
    '"2"',
    '“coverage” takes a number, not “2”',
    ['Write 2 (safe)'],
  ],
  [
    'a list where a map belongs',
    siteWithSpace('- air'),
    'kiln-2',
    'The space “kiln-2” takes a map of keys, not a list',
    [],
  ],
  [
    'a map where a value belongs',
    siteWithSpace(AIR, 'gradient: {a: 1}'),
    '{a: 1}',
    '“gradient” takes a value such as “0.8 K/m”, not a map',
    [],
  ],
  [
    'a value left out',
    siteWithSpace(AIR, 'gradient:'),
    'gradient',
    '“gradient” is empty; it takes a value such as “0.8 K/m”',
    [],
  ],
  [
    'a number above its greatest value',
    siteWithPoint('signals: {HR40: {kind: register, quantity: dew-point, address: 70000}}'),
    '70000',
    '“address” must be at most 65535',
    [],
  ],
  [
    'a number that must be above its limit',
    'dewright: 1\nsite: {id: fennmoor, defaults: {coverage: 0}}\n',
    '0',
    '“coverage” must be above 0',
    [],
  ],
  ['a map without entries', siteWithSpace('phases: {}'), '{}', '“phases” needs at least one entry', []],
  ['an empty file', '', '', 'The site file is empty; it needs the keys “dewright” and “site”', []],
  [
    'a file without its version',
    'site: {id: fennmoor}\n',
    'site',
    'The site file needs the key “dewright”',
    ['Add “dewright: 1” (safe)'],
  ],
  [
    'a file without its header',
    'dewright: 1\n',
    'dewright',
    'The site file needs the key “site”',
    ['Add “site:” to be filled in'],
  ],
  ['another version', 'dewright: 2\nsite: {id: fennmoor}\n', '2', '“dewright” is “1”, not “2”', ['Change to “1”']],
  [
    'an unknown top-level key far from the first',
    `${siteWithSpace(AIR)}point: {}\n`,
    'point',
    '“point” is no key of a site file; the nearest is “points”',
    ['Change to “points” (safe)', 'Remove “point”'],
  ],
  [
    'a list where entries belong',
    `${siteWithSpace(AIR)}points: [K2-MT-101]\n`,
    '[K2-MT-101]',
    '“points” takes a map of keys, not a list',
    [],
  ],
];

describe('one break of the schema is one clear sentence at its place', () => {
  it.each(BREAKS)('%s', (_, text, marked, sentence, fixes) => {
    const problems = problemsOf(text);
    expect(problems.map(({ rule, mended, subject, related, ...told }) => told)).toEqual([{ marked, sentence, fixes }]);
    expect(problems[0]?.rule).toBe('schema');
  });

  it.each(BREAKS.filter(([, , , , fixes]) => fixes.length > 0))(
    '%s: the first fix mends it',
    (_, text, __, sentence) => {
      const [problem] = problemsOf(text);
      expect(problemsOf(problem?.mended ?? text).map((left) => left.sentence)).not.toContain(sentence);
    },
  );
});

it.each<[FileKind, string, string, string]>([
  [
    'kit',
    'dewright: 1\nkit: {id: fennmoor}\nhumidity-probes:\n  hp-heated: {accuracy: [{when: 0 .. 90 %RH}]}\n',
    'when',
    'An item of “accuracy” needs the key “relative-humidity”',
  ],
  [
    'kit',
    'dewright: 1\nkit: {id: fennmoor}\nreceivers:\n  plc-ai: {bits: 14}\n',
    'plc-ai',
    'The receiver model “plc-ai” needs the key “input”',
  ],
  [
    'visit',
    'dewright: 1\nvisit: {site: fennmoor, date: 2026-09-02}\nsteps:\n  heater-on: {point: K2-MT-101}\n',
    'heater-on',
    'The step “heater-on” needs the key “done”',
  ],
  [
    'visit',
    'dewright: 1\nvisit: {site: fennmoor, date: 2026-09-02}\nreadings:\n  - {point: A, quantity: dew-point, shown: 5 degC}\n',
    'point',
    'An item of “readings” needs the key “reference”',
  ],
])('in a %s file, too', (kind, text, marked, sentence) => {
  expect(problemsOf(text, kind)).toMatchObject([{ marked, sentence }]);
});

it('each problem says which entry it belongs to', () => {
  const text = `${siteWithSpace('title: x')}points:\n  K2-MT-101: {}\nroom: {}\n`;
  expect(problemsOf(text).map(({ subject }) => subject)).toEqual(['kiln-2', 'K2-MT-101', '']);
});
