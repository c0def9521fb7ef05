import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import type { View } from '../../server/src/views/view.ts';
import { whatIfView } from '../../server/src/views/what-if.ts';
import { FENNMOOR, SITE } from '../features/fennmoor.ts';
import { edited, type Marked, uriOf, workspaceOf } from '../features/marked-files.ts';
import {
  cellsOf,
  elementsNamed,
  fennmoorAt,
  listBehind,
  requestOf,
  SITE_FILE,
  show,
  subjectsOf,
  wordsOf,
} from './shown-view.ts';

const RISE = 'points/K2-MT-101/humidity-probe/heater/rise';
const INSERTION = 'points/K2-MT-101/humidity-probe/mounting/insertion';
const ATTEMPT = { [RISE]: '1 K' };

function point(site = SITE): Marked {
  return fennmoorAt('K2-MT-101:', site);
}

function fieldNames(view: View): readonly string[] {
  return ['input', 'select']
    .flatMap((name) => elementsNamed(view.body, name))
    .map(({ attributes }) => String(attributes.name));
}

function written(marked: Marked, inputs: Readonly<Record<string, string>>): string {
  const edits = whatIfView.edits?.(requestOf(marked, inputs)) ?? [];
  return edits.length === 0 ? marked.text : (edited(marked.workspace, edits)[SITE_FILE] ?? '');
}

describe('the fields', () => {
  it('are the quantities, the words and the models that the point and its space have in the file, in its order', () => {
    expect(fieldNames(show(whatIfView, point())).toSorted()).toEqual(
      [
        'points/K2-MT-101/humidity-probe/model',
        'points/K2-MT-101/humidity-probe/heater/mode',
        RISE,
        'points/K2-MT-101/humidity-probe/heater/set-at',
        INSERTION,
        'points/K2-MT-101/air-temperature-probe/model',
        'points/K2-MT-101/reports/relative-humidity/tolerance',
        'points/K2-MT-101/reports/dew-point/tolerance',
        'points/K2-MT-101/supply/voltage',
        'points/K2-MT-101/supply/cable/length',
        'points/K2-MT-101/supply/cable/conductor',
        'points/K2-MT-101/signals/AO1/span',
        'spaces/kiln-2/pressure',
        'spaces/kiln-2/air/temperature',
        'spaces/kiln-2/air/humidity',
        'spaces/kiln-2/air/speed',
      ].toSorted(),
    );
  });

  it('say how many points the space has', () => {
    const legends = elementsNamed(show(whatIfView, point()).body, 'legend').map(wordsOf);
    expect(legends).toEqual([
      'humidity-probe',
      'air-temperature-probe',
      'reports',
      'supply',
      'signals',
      'space kiln-2, which 2 points are in',
    ]);
  });

  it('what is said behind an alias has none: it would change elsewhere too', () => {
    const site = SITE.replace(
      'heater: {mode: continuous, rise: 8 K, set-at: factory}',
      'heater: &hot {mode: continuous, rise: 8 K, set-at: factory}',
    ).replace('heater: {mode: continuous, rise: 8 K, set-at: site}', 'heater: *hot');
    const names = fieldNames(show(whatIfView, fennmoorAt('K2-MT-102:', site)));
    expect(names.filter((name) => name.includes('heater'))).toEqual([]);
  });
});

describe('a value that is tried', () => {
  it('shows what comes, what goes and which numbers change, as a file with it would', () => {
    const marked = point();
    const view = show(whatIfView, marked, ATTEMPT);
    const workspace = workspaceOf({
      ...FENNMOOR,
      [SITE_FILE]: SITE.replace('rise: 8 K, set-at: factory', 'rise: 1 K, set-at: factory'),
    });
    const after = workspace.analysis(uriOf(SITE_FILE));
    if (after === undefined) throw new Error('no analysis');
    const [now, before] = [subjectsOf(after), subjectsOf(marked.analysis)];
    const [come, gone] = [now.filter((name) => !before.includes(name)), before.filter((name) => !now.includes(name))];
    expect(come).toContain('K2-MT-101 heater-rise-short');
    expect(gone).toContain('K2-MT-101 tolerance-marginal');
    const rulesOf = (heading: string) => listBehind(view, heading).map((item) => /\((\S+)\)$/.exec(item)?.[1]);
    expect(rulesOf('New')).toEqual(come.map((name) => name.split(' ')[1]));
    expect(rulesOf('Gone')).toEqual(gone.map((name) => name.split(' ')[1]));
    const [, ...numbers] = cellsOf(elementsNamed(view.body, 'table')[0]);
    psychrolib.SetUnitSystem(psychrolib.SI);
    const heated = (rise: number) => (88 * psychrolib.GetSatVapPres(78)) / psychrolib.GetSatVapPres(78 + rise);
    const [, ...shown] = numbers.find(([title]) => title === 'Highest humidity at the sensor') ?? [];
    expect(shown.length).toBe(2);
    // Half of the last digit shown, and the enhancement factor that psychrolib leaves out: over 8 K it falls by 0.1 %.
    for (const [index, rise] of [8, 1].entries()) {
      expect(Math.abs(Number.parseFloat(shown[index] ?? '') - heated(rise))).toBeLessThan(0.05 + 0.001 * heated(rise));
    }
  });

  it('taken back shows the finding go', () => {
    const site = SITE.replace('rise: 8 K, set-at: factory', 'rise: 1 K, set-at: factory');
    const view = show(whatIfView, point(site), { [RISE]: '8 K' });
    expect(listBehind(view, 'Gone').join()).toContain('heater-rise-short');
  });

  it('leaves the stored file and its analysis as they are', () => {
    const marked = point();
    show(whatIfView, marked, ATTEMPT);
    expect(marked.workspace.analysis(marked.file)).toBe(marked.analysis);
    expect(marked.workspace.parsed(marked.file)?.text).toBe(SITE);
  });

  it('that is no quantity gets one sentence at its field, and the others still count', () => {
    const view = show(whatIfView, point(), { [RISE]: 'hot', [INSERTION]: '150 mm' });
    const fields = elementsNamed(view.body, 'div').filter(({ attributes }) => attributes.class === 'field changed');
    expect(fields.map(wordsOf)).toEqual([
      expect.stringMatching(/^heater › risewas 8 K“hot” is not [^.]*\.$/),
      'mounting › insertionwas 200 mm',
    ]);
    const [invalid] = elementsNamed(fields.slice(0, 1), 'input');
    const [problem] = elementsNamed(fields.slice(0, 1), 'span').filter(({ attributes }) => attributes.id !== undefined);
    expect(invalid?.attributes).toMatchObject({ 'aria-invalid': 'true', 'aria-describedby': problem?.attributes.id });
    expect(written(point(), { [RISE]: 'hot', [INSERTION]: '150 mm' })).toBe(SITE.replace('200 mm', '150 mm'));
  });

  it.each([
    ['8', /^“8” needs a unit: K/],
    ['8 m', /is a length, and/],
    ['', /is not/],
    ['8 .. 9 K', /^One value is expected here, not a range/],
    ['8 K}, x: {', /./],
  ])('%s is refused', (text, sentence) => {
    const [problem] = elementsNamed(show(whatIfView, point(), { [RISE]: text }).body, 'span').filter(
      ({ attributes }) => attributes.class === 'problem',
    );
    expect(problem === undefined ? '' : wordsOf(problem)).toMatch(sentence);
    expect(written(point(), { [RISE]: text })).toBe(SITE);
  });
});

describe('writing', () => {
  it('changes what was tried and nothing else', () => {
    const inputs = {
      [RISE]: '6 K',
      'points/K2-MT-101/humidity-probe/model': 'hp-plain',
      'spaces/kiln-2/air/speed': '1 .. 2 m/s',
    };
    expect(written(point(), inputs)).toBe(
      SITE.replace('rise: 8 K, set-at: factory', 'rise: 6 K, set-at: factory')
        .replace('model: hp-heated', 'model: hp-plain')
        .replace('speed: 2 .. 4 m/s', 'speed: 1 .. 2 m/s'),
    );
  });

  it('can be asked for once something is changed that can be written', () => {
    const isDisabled = (inputs: Readonly<Record<string, string>>) =>
      elementsNamed(show(whatIfView, point(), inputs).body, 'button').find(
        ({ attributes }) => attributes['data-action'] === 'write',
      )?.attributes.disabled;
    expect([isDisabled({}), isDisabled({ [RISE]: 'hot' }), isDisabled(ATTEMPT)]).toEqual([true, true, false]);
  });

  it('ignores what is set for another point or for no field at all', () => {
    expect(written(point(), { 'points/K2-MT-102/humidity-probe/heater/rise': '1 K', nonsense: '1 K' })).toBe(SITE);
  });
});

it('whatever rise is tried, its view tells of the findings that a file with it has', () => {
  const marked = point();
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 40 }), (rise) => {
      const text = `${rise} K`;
      const workspace = workspaceOf({ ...FENNMOOR, [SITE_FILE]: written(marked, { [RISE]: text }) });
      const alternative = marked.workspace.analysisIf(marked.file, written(marked, { [RISE]: text }));
      const [found, expected] = [alternative, workspace.analysis(uriOf(SITE_FILE))].map((analysis) =>
        analysis?.findings.map(({ rule, message, range }) => ({ rule, message, range })),
      );
      expect(found).toEqual(expected);
    }),
    { numRuns: 15 },
  );
});
