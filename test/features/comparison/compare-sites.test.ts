import { describe, expect, it } from 'vitest';
import { Workspace } from '../../../server/src/analysis/workspace.ts';
import {
  type AnalysedSite,
  type Comparison,
  compareSites,
} from '../../../server/src/features/comparison/compare-sites.ts';
import { comparisonText } from '../../../server/src/features/comparison/comparison-text.ts';
import { readSample } from '../../samples/sample-files.ts';
import { KIT, SITE } from '../fennmoor.ts';

function analysed(site: string, kit = KIT, kitName = 'kits/fennmoor.dewkit.yaml'): AnalysedSite {
  const workspace = new Workspace({ today: () => '2026-11-25' });
  workspace.set('file:///a.dewsite.yaml', site);
  workspace.set(`file:///${kitName}`, kit);
  const analysis = workspace.analysis('file:///a.dewsite.yaml');
  if (analysis?.content.kind !== 'site') throw new Error('no site');
  return { analysis, site: analysis.content.site };
}

const BEFORE = analysed(SITE);

/** What is told of the small site after some of its text is replaced. */
function afterEdits(...edits: readonly (readonly [string, string])[]): Comparison {
  const text = edits.reduce((site, [from, to]) => {
    if (!site.includes(from)) throw new RangeError(`“${from}” does not stand in the file`);
    return site.replaceAll(from, to);
  }, SITE);
  return compareSites(BEFORE, analysed(text));
}

const inWords = ({ values }: Comparison): readonly string[] =>
  values.map(({ kind, path, before, after: now }) => [kind, path.join('.'), before ?? '-', now ?? '-'].join(' | '));

describe('what is written otherwise and means the same', () => {
  it.each([
    ['another unit', '24 V', '24000 mV'],
    ['a temperature in kelvin', 'temperature: 55 .. 78 degC', 'temperature: 328.15 .. 351.15 K'],
    ['quotes', 'space: kiln-2', 'space: "kiln-2"'],
    ['blanks', '{tolerance: 0.8 K}', '{ tolerance:   0.8  K }'],
    ['block style', 'mounting: {insertion: 200 mm}', 'mounting:\n        insertion: 200 mm'],
    ['a comment', '    pressure: 99 kPa', '    # measured\n    pressure: 99 kPa'],
    ['the order of keys', 'model: hp-heated\n      serial: A1001', 'serial: A1001\n      model: hp-heated'],
    ['the order of a list', 'exposure: [acetic-acid]', 'exposure: [acetic-acid] # oak'],
    ['a default that is stated', 'supply: {voltage: 24 V', 'supply: {kind: installed, voltage: 24 V'],
    ['an alias', 'rise: 8 K, set-at: site', 'rise: &rise 8 K, set-at: site'],
  ])('%s makes no difference', (_, from, to) => {
    expect(comparisonText(afterEdits([from, to]))).toBe('Nothing has changed in meaning.');
  });

  it('the order of points makes no difference', () => {
    const [head = '', points = ''] = SITE.split('points:\n');
    const second = points.indexOf('  K2-MT-102:');
    const swapped = `${head}points:\n${points.slice(second)}${points.slice(0, second)}`;
    expect(comparisonText(compareSites(BEFORE, analysed(swapped)))).toBe('Nothing has changed in meaning.');
  });
});

describe('what is stated anew', () => {
  it('a value, with what it was', () => {
    expect(inWords(afterEdits(['rise: 8 K, set-at: factory', 'rise: 10 K, set-at: factory']))).toEqual([
      'changed | points.K2-MT-101.humidity-probe.heater.rise | 8 K | 10 K',
    ]);
  });

  it('a signal that came, whole', () => {
    const added = '    signals:\n      AO2: {kind: voltage, quantity: dew-point, span: 0 .. 90 degC}';
    expect(inWords(afterEdits(['    signals:', added]))).toEqual([
      'added | points.K2-MT-101.signals.AO2 | - | { kind: voltage, quantity: dew-point, span: 0 .. 90 degC }',
    ]);
  });

  it('a signal that was renamed', () => {
    expect(inWords(afterEdits(['AO1:', 'AO7:']))).toEqual(['renamed | points.K2-MT-101.signals.AO7 | AO1 | AO7']);
  });

  it('points that were renamed together, though one takes its air temperature from the other', () => {
    expect(inWords(afterEdits(['K2-MT-10', 'K9-MT-10']))).toEqual([
      'renamed | points.K9-MT-101 | K2-MT-101 | K9-MT-101',
      'renamed | points.K9-MT-102 | K2-MT-102 | K9-MT-102',
    ]);
    expect(afterEdits(['K2-MT-10', 'K9-MT-10'])).toMatchObject({ facts: [], findings: [] });
  });

  it('a space that was renamed, with the points that name it', () => {
    expect(inWords(afterEdits(['kiln-2:', 'kiln-7:'], ['space: kiln-2', 'space: kiln-7']))).toEqual([
      'renamed | spaces.kiln-7 | kiln-2 | kiln-7',
    ]);
  });

  it('a space and its points that were renamed at once', () => {
    const { values, facts, findings } = afterEdits(['kiln-2', 'kiln-7'], ['K2-MT', 'K7-MT']);
    expect(values.map(({ kind }) => kind)).toEqual(['renamed', 'renamed', 'renamed']);
    expect([...facts, ...findings]).toEqual([]);
  });

  it('a point that went', () => {
    const { values } = compareSites(BEFORE, analysed(SITE.slice(0, SITE.indexOf('  K2-MT-102:'))));
    expect(values.map(({ kind, path }) => `${kind} ${path.join('.')}`)).toEqual(['removed points.K2-MT-102']);
  });

  it('a figure of a model that both versions use, and of no other', () => {
    const kit = KIT.replace('head-temperature: 0.1 K', 'head-temperature: 0.3 K').replace('bits: 14', 'bits: 12');
    expect(inWords(compareSites(BEFORE, analysed(SITE, kit)))).toEqual([
      'changed | humidity-probes.hp-heated.head-temperature | 0.1 K | 0.3 K',
      'changed | receivers.plc-ai.bits | 14 | 12',
    ]);
  });

  it('the order of the phases', () => {
    const [one, other] = [
      'warm-up: {temperature: 12 .. 55 degC, humidity: 50 .. 60 %RH}',
      'dry: {temperature: 55 .. 60 degC, humidity: 35 .. 50 %RH}',
    ];
    const phased = (first: string, second: string): AnalysedSite =>
      analysed(SITE.replace(/air:\n.*\n.*\n.*\n/, `phases:\n      ${first}\n      ${second}\n`));
    expect(inWords(compareSites(phased(one, other), phased(other, one)))).toEqual([
      'changed | spaces.kiln-2.phases | in the order warm-up, dry | in the order dry, warm-up',
    ]);
  });
});

describe('the numbers that follow', () => {
  it('of a higher rise, with the rise as the cause', () => {
    const { facts } = afterEdits(['rise: 8 K, set-at: factory', 'rise: 10 K, set-at: factory']);
    expect(facts.map(({ subject }) => subject)).toContain('K2-MT-101');
    for (const { because } of facts) {
      expect(because.map(({ path }) => path.join('.'))).toEqual(['points.K2-MT-101.humidity-probe.heater.rise']);
    }
    expect(facts.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['humidity-at-sensor', 'margin-to-dew-point', 'highest-head-temperature']),
    );
  });

  it('of a figure in the kit, with the figure as the cause', () => {
    const kit = KIT.replace('head-temperature: 0.1 K', 'head-temperature: 0.3 K');
    const { facts } = compareSites(BEFORE, analysed(SITE, kit));
    expect(facts.map(({ id }) => id)).toContain('dew-point/expanded-uncertainty');
    for (const { because } of facts) expect(because.map(({ path }) => path.at(-1))).toEqual(['head-temperature']);
  });

  it('of another model, with the choice as the cause', () => {
    const { facts } = afterEdits(['model: hp-heated\n', 'model: hp-plain\n']);
    const uncertainty = facts.find(({ id }) => id === 'dew-point/expanded-uncertainty');
    expect(uncertainty?.because.map(({ path }) => path.join('.'))).toEqual(['points.K2-MT-101.humidity-probe.model']);
    expect(uncertainty?.after).toBe(
      'none, the kit does not say how well the model hp-plain knows the temperature of its sensor',
    );
  });
});

describe('the findings', () => {
  it('that come with a mistake go when it is mended', () => {
    const mistake: readonly [string, string] = ['air-temperature: air-temperature-probe, ', ''];
    const came = afterEdits(mistake).findings.map(({ kind, rule, subject }) => `${kind} ${rule} ${subject}`);
    expect(came).toContain('came air-temperature-unassigned K2-MT-101');
    const mended = compareSites(analysed(SITE.replace(...mistake)), BEFORE).findings;
    expect(mended.map(({ kind, rule, subject }) => `${kind} ${rule} ${subject}`)).toContain(
      'went air-temperature-unassigned K2-MT-101',
    );
  });

  it('an acceptance is told with its reason', () => {
    const text = SITE.replace(
      '    humidity-probe: {model',
      '    # accept check-plan-missing: checked with K2-MT-101\n    humidity-probe: {model',
    );
    const { findings } = compareSites(
      BEFORE,
      analysed(text.replace('  K2-MT-102:', '  # accept check-plan-missing: checked with K2-MT-101\n  K2-MT-102:')),
    );
    expect(findings).toContainEqual(
      expect.objectContaining({
        kind: 'accepted',
        rule: 'check-plan-missing',
        subject: 'K2-MT-102',
        reason: 'checked with K2-MT-101',
      }),
    );
  });

  it('are the same where only their numbers differ', () => {
    const { findings } = afterEdits(['tolerance: 3 %RH', 'tolerance: 2.9 %RH']);
    expect(findings).toEqual([]);
  });
});

/** Values of one kind that can stand for each other in any sample, so that a change keeps the file readable. */
const CHANGES: readonly (readonly [RegExp, (number: number) => string])[] = [
  [/(\d+(?:\.\d+)?) mm(?=[,} ])/g, (number) => `${number * 1.25} mm`],
  [/(\d+(?:\.\d+)?) K(?=[,} ])/g, (number) => `${number * 1.25} K`],
  [/(\d+(?:\.\d+)?) (?=%RH[,} ])/g, (number) => `${number * 0.9} `],
  [/(\d+(?:\.\d+)?) degC(?=[,} ])/g, (number) => `${number + 1} degC`],
  [/(\d+(?:\.\d+)?) m\/s(?=[,} ])/g, (number) => `${number * 1.5} m/s`],
  [/(\d+(?:\.\d+)?) mm2(?=[,} ])/g, (number) => `${number * 2} mm2`],
  [/(\d+(?:\.\d+)?) kPa(?=[,} ]|$)/gm, (number) => `${number + 1} kPa`],
  [/(\d+(?:\.\d+)?) s(?=[,} ]|$)/gm, (number) => `${number * 3} s`],
  [/(\d+(?:\.\d+)?) W(?=[,} ])/g, (number) => `${number * 2} W`],
  [/(\d+(?:\.\d+)?) months(?=[,} ])/g, (number) => `${number + 6} months`],
];

/** Between them they have every kind of signal, heated and unheated heads, and findings. */
const SITES = ['bakery-prover.dewsite.yaml', 'timber-kilns.dewsite.yaml'];

describe('every changed number has a cause', () => {
  it.each(SITES)('%s, each value of the site and of its kit changed alone', (name) => {
    const site = readSample(name);
    const kitName = /kits: \[(.*?)[\],]/.exec(site)?.[1] ?? '';
    const kit = readSample(kitName);
    const before = analysed(site, kit, kitName);
    const edited = CHANGES.flatMap((change) => [
      ...oneByOne(site, change).map((text) => analysed(text, kit, kitName)),
      ...oneByOne(kit, change).map((text) => analysed(site, text, kitName)),
    ]);
    const told = edited.map((after) => compareSites(before, after));
    const withoutCause = told.flatMap(({ values, facts }) =>
      facts.flatMap(({ subject, id, because, inputs }) =>
        because.length + inputs.length > 0 ? [] : [`${values.map(({ path }) => path.join('.'))}: ${subject} ${id}`],
      ),
    );
    expect(withoutCause).toEqual([]);
    expect(told.flatMap(({ facts }) => facts).length).toBeGreaterThan(100);
  });
});

function oneByOne(text: string, [pattern, change]: (typeof CHANGES)[number]): readonly string[] {
  return [...text.matchAll(pattern)].map(({ index, 0: whole, 1: number }) => {
    return text.slice(0, index) + change(Number(number)) + text.slice(index + whole.length);
  });
}
