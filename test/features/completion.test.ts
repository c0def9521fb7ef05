import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { completionsAt } from '../../server/src/features/writing/completion/completion.ts';
import {
  type CompletionItem,
  plainText,
  snippetText,
} from '../../server/src/features/writing/completion/completion-item.ts';
import { FENNMOOR, KIT, SITE } from './fennmoor.ts';
import { openAt } from './marked-files.ts';

/** The small site with a line more, typed so far as `|`, below the first place of some words. */
function typedBelow(words: string, line: string): string {
  const at = SITE.indexOf('\n', SITE.indexOf(words)) + 1;
  return `${SITE.slice(0, at)}${line}\n${SITE.slice(at)}`;
}

function typedFor(words: string, instead: string): string {
  if (!SITE.includes(words)) throw new RangeError(words);
  return SITE.replace(words, instead);
}

function items(marked: string, file = 'fennmoor.dewsite.yaml'): readonly CompletionItem[] {
  const { workspace, analysis, offset } = openAt(file, marked, FENNMOOR);
  return completionsAt(workspace, analysis, offset).items;
}

const labels = (marked: string, file?: string): readonly string[] => items(marked, file).map(({ label }) => label);
const item = (marked: string, label: string, file?: string): CompletionItem | undefined =>
  items(marked, file).find((candidate) => candidate.label === label);
const inserted = (marked: string, label: string): string => snippetText(item(marked, label)?.insert ?? ['—']);

describe('keys', () => {
  it('that are there are left out, the needed ones come first', () => {
    expect(labels(typedBelow('  K2-MT-102:', '    |'))).toEqual([
      'title',
      'air-temperature-probe',
      'transmitter',
      'supply',
      'signals',
      'alarms',
      'checks',
    ]);
    expect(labels('points:\n  A-1:\n    |\n')[0]).toBe('space');
  });

  it('of which only one may stand are left out once one does', () => {
    expect(labels(typedFor('speed: 2 .. 4 m/s', '|'))).toEqual(['speed', 'ramp']);
    expect(labels('spaces:\n  a:\n    phases: {}\n    |\n')).not.toContain('air');
  });

  it('of a signal follow its kind', () => {
    expect(labels(typedFor('receiver: plc-ai}', '|}'))).toEqual(['current', 'load', 'on-fault', 'receiver']);
    expect(labels('points:\n  A-1:\n    signals:\n      AO1: {|}\n')).toEqual(['kind']);
  });

  it('say what they are, with an example and the built-in value', () => {
    const voltage = item(typedFor('voltage: 24 V', '|'), 'voltage');
    expect(voltage?.detail).toBe('e.g. 24 V');
    expect(voltage?.documentation).toBe('Voltage at the near end of the cable, the lowest that the supply may give.');
    expect(item('site:\n  defaults:\n    |\n', 'margin')?.documentation).toMatch(/Built in: `2 K`$/);
  });

  it.each([
    ['a value with its unit', 'points:\n  A-1:\n    supply: {|}\n', 'voltage', `voltage: \${1:24} V`],
    ['a range', 'spaces:\n  a:\n    air: {|}\n', 'temperature', `temperature: \${1:55} .. \${2:78} degC`],
    ['words', 'points:\n  A-1:\n    humidity-probe:\n      heater: {|}\n', 'set-at', `set-at: \${1|factory,site|}`],
    ['a name to choose', 'points:\n  A-1:\n    |\n', 'space', 'space: $1'],
    ['a map with what it needs', 'points:\n  A-1:\n    |\n', 'humidity-probe', 'humidity-probe:\n  model: $1'],
    ['a map in braces', 'points:\n  A-1: {|}\n', 'humidity-probe', 'humidity-probe: {model: $1\\}'],
    ['a list', 'spaces:\n  a:\n    |\n', 'exposure', 'exposure: [$1]'],
    ['a date', 'points:\n  A-1:\n    checks: {|}\n', 'last', `last: \${1:2026-03-14}`],
    ['a truth', 'steps:\n  a: {|}\n', 'done', `done: \${1|true,false|}`, 'a.dewvisit.yaml'],
    [
      'a tolerance in the unit of its quantity',
      'points:\n  A-1:\n    reports:\n      dew-point: {|}\n',
      'tolerance',
      `tolerance: \${1:0.8} K`,
    ],
    ['a key whose colon is there', 'points:\n  A-1:\n    sp|: x\n', 'space', 'space'],
  ])('bring the form of %s', (_, marked, label, expected, file = 'a.dewsite.yaml') => {
    expect(snippetText(item(marked, label, file)?.insert ?? [])).toBe(expected);
  });

  it('are found while lines around do not parse', () => {
    expect(labels(typedFor('      serial: A1001', '      hea|'))).toEqual(['serial']);
    expect(labels('points:\n  A-1:\n    supply: {voltage: 24 V, |\n    title: x\n')).toEqual(['kind', 'cable']);
  });
});

describe('values', () => {
  it('are the words of the schema with their meaning', () => {
    const offered = items(typedFor('mode: continuous', 'mode: |'));
    expect(offered.map(({ label }) => label)).toEqual(['off', 'continuous', 'on-demand']);
    expect(offered[0]?.documentation).toBe('Never: the sensor is at air temperature.');
  });

  it('of `kind` are those of every branch', () => {
    expect(labels(typedFor('kind: current-loop', 'kind: |'))).toEqual(['current-loop', 'voltage', 'register']);
  });

  it.each([
    ['a pressure', typedFor('pressure: 99 kPa', 'pressure: 99 |'), ['kPa', 'psi', 'hPa']],
    ['a range', typedFor('35 .. 88 %RH', '35 .. 88 |'), ['%RH']],
    ['a tolerance of a dew point', typedFor('tolerance: 0.8 K', 'tolerance: 0.8 |'), ['K']],
    ['a span of a humidity', typedFor('span: 0 .. 100 %RH', 'span: 0 .. 100 %|'), ['%RH']],
    ['a fixed air temperature', typedFor('air-temperature: K2-MT-101', 'air-temperature: 60 |'), ['degC', 'degF', 'K']],
  ])('behind a number, the units of %s', (_, marked, first) => {
    expect(labels(marked).slice(0, 1)).toEqual(first.slice(0, 1));
    expect(labels(marked)).toEqual(expect.arrayContaining([...first]));
  });

  it('with a unit are offered whole where nothing is typed', () => {
    expect(inserted(typedFor('tolerance: 0.8 K', 'tolerance: |'), '0.8 K')).toBe(`\${1:0.8} K`);
    expect(labels(typedFor('span: 0 .. 100 %RH', 'span: |'))).toEqual(['0 .. 100 %RH']);
  });

  it('behind a colon without a blank bring the blank', () => {
    expect(plainText(items(typedFor('mode: continuous', 'mode:|'))[0]?.insert ?? [])).toBe(' off');
  });

  it('are none in a title, a comment or a number', () => {
    expect(labels(typedFor('title: Kiln 2, green oak', 'title: Kiln |'))).toEqual([]);
    expect(labels(typedBelow('  kiln-2:', '    # the first |'))).toEqual([]);
    expect(labels(typedFor('tolerance: 0.8 K', 'tolerance: 0.|'))).not.toContain('K');
  });
});

describe('quantities', () => {
  it('that a heated head without an air probe cannot know come last, with the reason', () => {
    const offered = items(
      typedFor('      relative-humidity: {air-temperature: K2-MT-101, tolerance: 3 %RH}', '      |'),
    );
    const reasons = offered.filter(({ detail }) => detail?.startsWith('no: the heated head')).map(({ label }) => label);
    expect(reasons).toEqual([
      'relative-humidity',
      'relative-humidity-ice',
      'air-temperature',
      'absolute-humidity',
      'wet-bulb',
      'specific-enthalpy',
      'vapour-pressure-deficit',
      'dew-point-depression',
    ]);
    expect(offered[0]?.label).toBe('dew-point');
  });

  it('that the point can report bring their range over the envelope, as psychrolib has it', () => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    // The ends of the envelope: 55 °C with 35 %RH, 78 °C with 88 %RH. psychrolib leaves out the enhancement factor,
    // which moves these dew points by less than 0.05 K.
    const [low, high] = [psychrolib.GetTDewPointFromRelHum(55, 0.35), psychrolib.GetTDewPointFromRelHum(78, 0.88)];
    const detail = item(
      typedBelow('    reports:\n      relative-humidity: {air-temperature: air', '      |'),
      'frost-point',
    )?.detail;
    expect(detail).toBe('no: no state of the envelope has it');
    const dewPoint = item(typedFor('      dew-point: {tolerance: 0.8 K}', '      |'), 'dew-point')?.detail ?? '';
    const shown = /^([\d.]+) … ([\d.]+) °C$/.exec(dewPoint)?.slice(1).map(Number) ?? [];
    expect(Math.abs((shown[0] ?? 0) - low)).toBeLessThan(0.1);
    expect(Math.abs((shown[1] ?? 0) - high)).toBeLessThan(0.1);
  });

  it('assign the air probe of a heated point at once', () => {
    expect(inserted(typedFor('      dew-point: {tolerance: 0.8 K}', '      |'), 'absolute-humidity')).toBe(
      'absolute-humidity: {air-temperature: air-temperature-probe, tolerance: $1 g/m3\\}',
    );
    expect(inserted(typedFor('      dew-point: {tolerance: 0.8 K}', '      |'), 'dew-point')).toBe(
      'dew-point: {tolerance: $1 K\\}',
    );
  });

  it('of a signal are first those that the point reports', () => {
    const offered = items(typedFor('quantity: relative-humidity', 'quantity: |'));
    expect(offered.slice(0, 2).map(({ label }) => label)).toEqual(['relative-humidity', 'dew-point']);
    expect(offered[2]?.detail).toBe('not reported by this point');
  });
});

describe('names', () => {
  it('of models that suit the envelope come first with what is to spare, the others with the reason', () => {
    const offered = items(typedFor('model: hp-heated\n', 'model: |\n')).map(
      ({ label, detail }) => `${label}: ${detail}`,
    );
    // 120 °C less 78 °C less a rise of 8 K leaves 34 K; the plain probe ends at 80 °C, 6 K short, and has no heater.
    expect(offered).toEqual([
      'hp-heated: suits, 34 K to spare',
      'hp-plain: no: 6 K outside its temperature range; has no heater',
    ]);
  });

  it.each([
    ['mode: continuous, rise: 8 K', 'suits, 34 K to spare'],
    ['mode: off', 'no: made for 0 … 80 %RH'],
  ])('of a model for up to 80 %%RH, in air of up to 88 %%RH with the heater “%s”: “%s”', (heater, expected) => {
    const marked = typedFor('model: hp-heated\n', 'model: |\n').replace('mode: continuous, rise: 8 K', heater);
    const kit = KIT.replace('relative-humidity: 0 .. 100 %RH', 'relative-humidity: 0 .. 80 %RH');
    const files = { ...FENNMOOR, 'kits/fennmoor.dewkit.yaml': kit };
    const { workspace, analysis, offset } = openAt('fennmoor.dewsite.yaml', marked, files);
    const offered = completionsAt(workspace, analysis, offset).items;
    expect(offered.find(({ label }) => label === 'hp-heated')?.detail).toBe(expected);
  });

  it('of temperature probes do the same', () => {
    const offered = items(typedFor('{model: tp-slim,', '{model: |,'));
    expect(offered.map(({ label, detail }) => `${label}: ${detail}`)).toEqual([
      'tp-slim: no: does not list acetic-acid',
    ]);
  });

  it.each([
    ['spaces', typedFor('space: kiln-2', 'space: |'), ['kiln-2', 'hall']],
    ['receivers', typedFor('receiver: plc-ai', 'receiver: |'), ['plc-ai']],
    ['transmitters', typedBelow('  K2-MT-102:', '    transmitter: {model: |}'), ['tx-two']],
    ['kits not named yet', typedFor('[kits/fennmoor.dewkit.yaml]', '[|]'), ['kits/fennmoor.dewkit.yaml']],
    ['kits named already', typedFor('.dewkit.yaml]', '.dewkit.yaml, |]'), []],
    [
      'exposures not named yet',
      typedFor('[acetic-acid]', '[acetic-acid, wash-|]'),
      ['wash-down', 'steam-cleaning', 'formic-acid'],
    ],
  ])('of %s', (_, marked, expected) => {
    expect(labels(marked).slice(0, 3)).toEqual(expected);
  });

  it('of sites and points in a visit', () => {
    expect(labels('visit: {site: |}\n', 'b.dewvisit.yaml')).toEqual(['fennmoor']);
    expect(labels('visit: {site: fennmoor}\nreadings:\n  - {point: |}\n', 'b.dewvisit.yaml')).toEqual([
      'K2-MT-101',
      'K2-MT-102',
    ]);
  });

  it('of where the air temperature comes from: the own probe, then one in the same space', () => {
    const offered = items(typedFor('air-temperature: K2-MT-101', 'air-temperature: |'));
    expect(offered.map(({ label, detail }) => `${label}: ${detail}`)).toEqual([
      'K2-MT-101: probe in the same space',
      '60 degC: a fixed value',
      'air-temperature-probe: no: this point has none yet',
      'humidity-probe: no: its head is heated',
    ]);
  });

  it('of salts that are valid at the temperature of the check, with the humidity that Greenspan 1977 gives', () => {
    const checks = '    checks: {interval: 12 months, method: saturated-salt, salts: [|], at: 25 degC}';
    const offered = items(typedBelow('  K2-MT-102:', checks));
    expect(offered.find(({ label }) => label === 'NaCl')?.detail).toBe('75.3 %RH, sodium chloride');
    expect(offered.findLast(({ label }) => label === 'K2CO3')?.detail).toMatch(/^no: potassium carbonate, acid/);
    const cold = items(typedBelow('  K2-MT-102:', checks.replace('25', '75')));
    expect(cold.at(-1)?.detail).toMatch(/^no: .* only$/);
  });

  it('of salts behind `saturated-salt` in a reading', () => {
    const reading = 'readings:\n  - {point: K2-MT-101, at: 25 degC, using: saturated-salt Na|}\n';
    expect(labels(reading, 'b.dewvisit.yaml')).toContain('NaCl');
  });

  it('of rules, with the severities to choose from', () => {
    const [first] = items('site:\n  rules:\n    |\n', 'a.dewsite.yaml');
    expect(snippetText(first?.insert ?? [])).toMatch(/: \$\{1\|off,hint,information,warning,error\|\}$/);
  });
});

describe('conductors', () => {
  it('bring the voltage that is left at the end of the cable', () => {
    const offered = items(typedFor('conductor: 0.5 mm2', 'conductor: |'));
    // By hand, at 20 °C where no surroundings are given: 60 m out and back of 39.0 ohm/km is 4.68 ohm; 4.6 W from
    // 24 V: V = (24 + sqrt(576 − 4 · 4.68 · 4.6)) / 2 = 23.07 V.
    expect(offered.find(({ label }) => label === '0.5 mm2')?.detail).toBe('23.1 V at the far end');
    expect(offered[0]?.label).toBe('0.14 mm2');
  });

  it('come without a voltage where the load is not known', () => {
    const offered = items('points:\n  A-1:\n    supply: {cable: {length: 6 m, conductor: |}}\n', 'a.dewsite.yaml');
    expect(offered[0]?.label).toBe('0.14 mm2');
    expect(offered.every(({ detail }) => detail === undefined)).toBe(true);
  });
});

describe('snippets', () => {
  it('start an empty file of each kind, and what they start parses without a syntax problem', () => {
    for (const file of ['a.dewsite.yaml', 'a.dewkit.yaml', 'a.dewvisit.yaml']) {
      const skeleton = item('|', 'dewright: a new file', file);
      const text = plainText(skeleton?.insert ?? []);
      const { parsed } = openAt(file, `|${text}`);
      expect(parsed.model.problems.filter(({ rule }) => rule === 'yaml-syntax')).toEqual([]);
      expect(text).toMatch(/^dewright: 1\n/);
    }
  });

  it('start a space, and a point with the next tag, a space and a probe of the site', () => {
    expect(labels(typedBelow('spaces:', '  |')).slice(0, 2)).toEqual(['space with one envelope', 'space with phases']);
    const text = plainText(item(`${SITE}  |`, 'point')?.insert ?? []);
    expect(text).toMatch(/^K2-MT-103:\n {2}title: \n {2}space: hall\n {2}humidity-probe:\n {4}model: hp-heated\n/);
  });

  it.each([
    ['humidity-probes', 'humidity probe'],
    ['temperature-probes', 'temperature probe'],
    ['transmitters', 'transmitter'],
    ['receivers', 'receiver'],
  ])('start a model under %s that the schema accepts', (section, label) => {
    const head = 'dewright: 1\nkit: {id: a}\n';
    const text = plainText(item(`${head}${section}:\n  |\n`, label, 'a.dewkit.yaml')?.insert ?? []);
    const filled = `${head}${section}:\n  ${text.replaceAll('\n', '\n  ').replace('title: \n', 'title: x\n').replace('[]', '[wash-down]')}\n`;
    const { analysis } = openAt('a.dewkit.yaml', `|${filled}`);
    expect(analysis.parsed.model.problems).toEqual([]);
  });

  it('start signals and alarms of a point, but not inside braces', () => {
    expect(labels(typedBelow('    signals:', '      |')).slice(0, 3)).toEqual([
      'current loop',
      'voltage output',
      'register',
    ]);
    expect(labels('points:\n  A-1:\n    signals: {|}\n', 'a.dewsite.yaml')).toEqual([]);
  });
});

it('a kit file completes as a site file does', () => {
  const marked = KIT.replace('kind: constant-power', 'kind: |');
  expect(labels(marked, 'kits/fennmoor.dewkit.yaml')).toEqual(['constant-power', 'resistive']);
});
