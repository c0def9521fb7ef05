import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { acceptancesOf } from '../../server/src/analysis/acceptance.ts';
import type { Finding } from '../../server/src/analysis/finding.ts';
import { applyEdits } from '../../server/src/base/text-range.ts';
import { acceptancesAt } from '../../server/src/features/writing/acceptances.ts';
import { refactoringsAt } from '../../server/src/features/writing/refactorings/refactorings.ts';
import { cursorIn, FENNMOOR, SITE } from './fennmoor.ts';
import { edited, openAt, workspaceOf } from './marked-files.ts';

const NAME = 'fennmoor.dewsite.yaml';

/** The refactorings at a cursor: each title with the file as it is afterwards. */
function offered(marked: string): ReadonlyMap<string, string> {
  const { workspace, analysis, offset } = openAt(NAME, marked, FENNMOOR);
  return new Map(
    refactoringsAt(workspace, analysis, offset).map(({ title, edits }) => [
      title,
      edited(workspace, edits)[NAME] ?? '',
    ]),
  );
}

const at = (words: string): ReadonlyMap<string, string> => offered(cursorIn(SITE, words));

describe('a value is written in another unit', () => {
  // Worked by hand: 55 °C is 131 °F and 328.15 K; 99 kPa is 14.3587 psi (1 psi is 6894.757 Pa).
  it.each([
    ['temperature: 5|5 .. 78 degC', 'Write as 131 .. 172.4 degF', 'temperature: 131 .. 172.4 degF'],
    ['temperature: 5|5 .. 78 degC', 'Write as 328.15 .. 351.15 K', 'temperature: 328.15 .. 351.15 K'],
    ['pressure: 9|9 kPa', 'Write as 14.3587 psi', 'pressure: 14.3587 psi'],
    ['pressure: 9|9 kPa', 'Write as 990 hPa', 'pressure: 990 hPa'],
    ['length: 6|0 m', 'Write as 60000 mm', 'length: 60000 mm'],
    ['voltage: 2|4 V', 'Write as 24000 mV', 'voltage: 24000 mV'],
  ])('%s: %s', (words, title, line) => {
    expect(at(words).get(title)).toBe(SITE.replace(words.replace('|', ''), line));
  });

  it('by the quantity that it belongs to, and with the mark of a gauge pressure', () => {
    const marked =
      'points:\n  A-1:\n    signals:\n      AO1: {kind: voltage, quantity: mixing-ratio, span: 0 .. 4|0 g/kg}\n';
    expect([...offered(marked).keys()]).toEqual(['Write as 0 .. 0.04 kg/kg']);
    const gauge = offered('spaces:\n  a:\n    pressure: 6| .. 8 bar(g)\n');
    expect(gauge.get('Write as 600 .. 800 kPa(g)')).toBe('spaces:\n  a:\n    pressure: 600 .. 800 kPa(g)\n');
  });

  it('months become years but never days', () => {
    expect([...offered('points:\n  A-1:\n    checks: {interval: 1|2 months}\n').keys()]).toEqual(['Write as 1 years']);
  });

  it('is not offered where there is no other unit, or the value does not read', () => {
    expect([...at('rise: 8| K').keys()]).toEqual([]);
    expect([...offered('spaces:\n  a:\n    pressure: 9|9 kpa\n').keys()]).toEqual([]);
  });
});

describe('an envelope is written in another measure', () => {
  psychrolib.SetUnitSystem(psychrolib.SI);

  it('a relative humidity as a dew point, rounded outward, with what follows from it', () => {
    const [title = '', text] = [...at('humi|dity: 35 .. 88 %RH')][0] ?? [];
    const low = Math.floor(psychrolib.GetTDewPointFromRelHum(55, 0.35));
    const high = Math.ceil(psychrolib.GetTDewPointFromRelHum(78, 0.88));
    expect(text).toBe(SITE.replace('humidity: 35 .. 88 %RH', `dew-point: ${low} .. ${high} degC`));
    // The driest state of the new box is the lowest dew point in the hottest air; it is cut at saturation.
    const driest = (100 * psychrolib.GetSatVapPres(low)) / psychrolib.GetSatVapPres(78);
    const shown = /^Write as dew point, (\d+) … (\d+) °C; the envelope then takes in ([\d.]+) … 100 %RH$/.exec(title);
    expect(shown?.slice(1, 3).map(Number)).toEqual([low, high]);
    expect(Math.abs(Number(shown?.[3]) - driest)).toBeLessThan(0.1);
  });

  it('a dew point as a relative humidity, not beyond saturation', () => {
    const [title = '', text] = [...at('dew-po|int: 2 .. 18 degC')][0] ?? [];
    const driest = Math.floor((100 * psychrolib.GetSatVapPres(2)) / psychrolib.GetSatVapPres(32));
    expect(text).toBe(SITE.replace('dew-point: 2 .. 18 degC', `humidity: ${driest} .. 100 %RH`));
    expect(title).toMatch(/^Write as humidity, .* %RH; the envelope then takes in dew points of -?[\d.]+ … 32 °C$/);
  });

  it('in the phase that it is in', () => {
    const marked =
      'site: {id: a}\nspaces:\n  a:\n    phases:\n      one: {temperature: 20 .. 30 degC, humidity: 40 .. 60 %RH}\n      two: {temperature: 15 .. 18 degC, humi|dity: 40 .. 60 %RH}\n';
    const [, text] = [...offered(marked)][0] ?? [];
    const low = Math.floor(psychrolib.GetTDewPointFromRelHum(15, 0.4));
    const high = Math.ceil(psychrolib.GetTDewPointFromRelHum(18, 0.6));
    expect(text).toContain(`two: {temperature: 15 .. 18 degC, dew-point: ${low} .. ${high} degC}`);
  });

  it('not through an alias, nor where the envelope cannot be', () => {
    const aliased =
      'site: {id: a}\nspaces:\n  a:\n    air: &warm {temperature: 20 .. 30 degC, humidity: 40 .. 60 %RH}\n  b:\n    air: *wa|rm\n';
    expect([...offered(aliased).keys()]).toEqual([]);
    const impossible =
      'site: {id: a}\nspaces:\n  a:\n    air: {temperature: 20 .. 30 degC, dew-po|int: 20 .. 40 degC}\n';
    expect([...offered(impossible).keys()].filter((title) => title.includes('humidity'))).toEqual([]);
  });
});

describe('the one envelope becomes a phase', () => {
  const TITLE = 'Make this envelope a phase named “operation”';

  it('with its lines, comments and all', () => {
    const marked =
      'spaces:\n  a:\n    a|ir: # fans on\n      temperature: 1 .. 2 degC\n\n      # dry\n      humidity: 1 .. 2 %RH\n    title: x\n';
    expect(offered(marked).get(TITLE)).toBe(
      'spaces:\n  a:\n    phases:\n      operation: # fans on\n        temperature: 1 .. 2 degC\n\n        # dry\n        humidity: 1 .. 2 %RH\n    title: x\n',
    );
  });

  it('in braces too', () => {
    expect(offered('spaces:\n  a:\n    a|ir: {temperature: 1 .. 2 degC}\n').get(TITLE)).toBe(
      'spaces:\n  a:\n    phases:\n      operation: {temperature: 1 .. 2 degC}\n',
    );
    expect(offered('spaces:\n  a: {a|ir: {temperature: 1 .. 2 degC}}\n').has(TITLE)).toBe(false);
  });
});

describe('a point is copied', () => {
  it('under the next free tag of the workspace, without serial numbers', () => {
    const [title, text = ''] = [...at('  K2-MT|-101:')][0] ?? [];
    expect(title).toBe('Copy K2-MT-101 as K2-MT-103, without serial numbers');
    const copy = text.slice(text.indexOf('  K2-MT-103:'), text.indexOf('  K2-MT-102:'));
    const original = SITE.slice(SITE.indexOf('  K2-MT-101:'), SITE.indexOf('  K2-MT-102:'));
    expect(copy).toBe(
      original.replace('K2-MT-101', 'K2-MT-103').replace('      serial: A1001\n', '').replace(', serial: T2001', ''),
    );
    expect(text.replace(copy, '')).toBe(SITE);
  });

  it.each([
    ['A-9', 'A-10'],
    ['A-099', 'A-100'],
    ['HALL', 'HALL-2'],
  ])('%s as %s', (tag, next) => {
    const titles = [...offered(`points:\n  ${tag}|:\n    space: x\n`).keys()];
    expect(titles).toEqual([`Copy ${tag} as ${next}, without serial numbers`]);
  });

  it('at the end of a file that ends without a line break, and not with an anchor inside', () => {
    expect([...offered('points:\n  A-1|:\n    space: x').values()]).toEqual([
      'points:\n  A-1:\n    space: x\n  A-2:\n    space: x',
    ]);
    expect([...offered('points:\n  A-1|:\n    supply: &same {voltage: 24 V}\n').keys()]).toEqual([]);
  });
});

describe('a finding is accepted', () => {
  const FAULTY = SITE.replace('{air-temperature: K2-MT-101, tolerance: 3 %RH}', '{tolerance: 3 %RH}');

  const ANY_FINDING: Finding = {
    rule: 'tolerance-missed',
    severity: 'warning',
    message: 'It is missed.',
    subject: 'K2-MT-102',
    range: { start: 0, end: 0 },
    facts: [],
    related: [],
    fixes: [],
  };

  /** Accepts the first finding of a rule; the reason is typed in place of the words that stand for it. */
  function accepted(text: string, rule: string): string {
    const { analysis } = openAt(NAME, `|${text}`, FENNMOOR);
    const finding = analysis.findings.find((candidate) => candidate.rule === rule);
    const offer =
      finding && acceptancesAt(analysis, finding.range).find((candidate) => candidate.finding.rule === rule);
    if (offer === undefined) throw new RangeError(`nothing offers to accept ${rule}`);
    const after = edited(openAt(NAME, `|${text}`, FENNMOOR).workspace, [offer.edit])[NAME] ?? '';
    expect(after.slice(offer.reason.start, offer.reason.end)).toBe('say why this stands');
    return `${after.slice(0, offer.reason.start)}agreed${after.slice(offer.reason.end)}`;
  }

  const rulesOf = (text: string): readonly string[] =>
    workspaceOf({ ...FENNMOOR, [NAME]: text })
      .analysis(`file:///${NAME}`)
      ?.findings.map(({ rule }) => rule) ?? [];

  it('by a comment on the line above, at the indentation of the line', () => {
    const text = accepted(FAULTY, 'air-temperature-missing');
    expect(text).toContain(
      '    reports:\n      # accept air-temperature-missing: agreed\n      relative-humidity: {tol',
    );
    expect(rulesOf(FAULTY)).toContain('air-temperature-missing');
    expect(rulesOf(text)).not.toContain('air-temperature-missing');
  });

  it('behind the line where another acceptance stands above it', () => {
    const text = accepted(FAULTY, 'air-temperature-missing');
    const { analysis, parsed } = openAt(NAME, `|${text}`, FENNMOOR);
    const start = text.indexOf('relative-humidity: {tol');
    const finding = { ...ANY_FINDING, range: { start, end: start + 1 } };
    const [offer] = acceptancesAt({ ...analysis, findings: [finding] }, finding.range);
    const after = offer && applyEdits(parsed.text, [offer.edit]);
    expect(after).toContain('{tolerance: 3 %RH} # accept tolerance-missed: say why this stands\n');
    const both = openAt(NAME, `|${after}`, FENNMOOR).parsed;
    const line = both.lines.positionAt(both.text.indexOf('relative-humidity: {tol')).line;
    expect(acceptancesOf(both).map((acceptance) => [acceptance.rule, acceptance.line])).toEqual([
      ['air-temperature-missing', line],
      ['tolerance-missed', line],
    ]);
  });

  it('never where the text does not parse, and not where the line has another comment', () => {
    const text = 'site:\n  # accept schema: known\n  id: a # the first\n';
    const { analysis } = openAt(NAME, `|${text}`);
    const range = { start: text.indexOf('id'), end: text.indexOf('id') + 2 };
    const offers = (rule: string) => acceptancesAt({ ...analysis, findings: [{ ...ANY_FINDING, rule, range }] }, range);
    expect(offers('yaml-syntax')).toEqual([]);
    expect(offers('tolerance-missed')).toEqual([]);
  });
});
