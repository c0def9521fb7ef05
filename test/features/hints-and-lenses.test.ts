import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { isKnown, showFact } from '../../server/src/evaluate/facts/fact.ts';
import { codeLenses, type LensKind } from '../../server/src/features/reading/code-lenses.ts';
import { HINT_KINDS, type HintKind, hintTooltip, inlayHints } from '../../server/src/features/reading/inlay-hints.ts';
import { factsById } from '../evaluate/facts-by-id.ts';
import { FENNMOOR, SITE } from './fennmoor.ts';
import { openAt } from './marked-files.ts';

const fennmoor = openAt('fennmoor.dewsite.yaml', `|${SITE}`, FENNMOOR);
const whole = { start: 0, end: SITE.length };
const allKinds = new Set<HintKind>(HINT_KINDS);

/** `humidity: 35 .. 88 %RH⟨dew point …⟩` */
function hintLines(kinds: ReadonlySet<HintKind> = allKinds, within = whole): readonly string[] {
  return inlayHints(fennmoor.analysis, within, kinds).map(({ at, label }) => {
    const lineStart = SITE.lastIndexOf('\n', at - 1) + 1;
    return `${SITE.slice(lineStart, at).trim()}⟨${label}⟩`;
  });
}

describe('inlay hints', () => {
  it('put the dew point behind a relative humidity, and the other way round', () => {
    const [dewPoint = '', humidity = ''] = hintLines(new Set(['envelope']));
    // psychrolib leaves out the enhancement factor: less than 0.05 K here, less than 0.1 %RH below.
    psychrolib.SetUnitSystem(psychrolib.SI);
    const numbers = (line: string) => (/⟨\D*([\d.]+) … ([\d.]+)/.exec(line) ?? []).slice(1).map(Number);
    const [low = 0, high = 0] = numbers(dewPoint);
    expect(Math.abs(low - psychrolib.GetTDewPointFromRelHum(55, 0.35))).toBeLessThan(0.1);
    expect(Math.abs(high - psychrolib.GetTDewPointFromRelHum(78, 0.88))).toBeLessThan(0.1);
    expect(dewPoint).toMatch(/^humidity: 35 \.\. 88 %RH⟨dew point /);
    // 2 °C of dew point in air of 32 °C is the driest; the box is cut at saturation.
    const [driest = 0, wettest = 0] = numbers(humidity);
    expect(Math.abs(driest - (100 * psychrolib.GetSatVapPres(2)) / psychrolib.GetSatVapPres(32))).toBeLessThan(0.2);
    expect(wettest).toBe(100);
    expect(humidity).toMatch(/dew-point: 2 \.\. 18 degC⟨/);
  });

  it('put the voltage that is left behind the supply voltage', () => {
    // By hand: 4.68 ohm out and back at 20 °C, 4.6 W, 24 V: 23.07 V (see the conductors of completion).
    expect(hintLines(new Set(['supply']))).toEqual(['supply: {voltage: 24 V⟨23.1 V at the probe⟩']);
  });

  it('show what the facts of the point say', () => {
    const { content } = fennmoor.analysis;
    const facts = factsById(content.kind === 'site' ? content.site.points.get('K2-MT-101') : undefined);
    const shownFact = (id: string): string => {
      const fact = facts.get(id);
      return isKnown(fact) ? showFact(fact) : 'nothing';
    };
    expect(hintLines(new Set(['heater']))[0]).toBe(
      `heater: {mode: continuous, rise: 8 K⟨reaches ${shownFact('rise-reachable')}⟩`,
    );
    expect(hintLines(new Set(['uncertainty'])).slice(0, 2)).toEqual([
      `relative-humidity: {air-temperature: air-temperature-probe, tolerance: 3 %RH⟨uncertainty ${shownFact('relative-humidity/expanded-uncertainty')}⟩`,
      `dew-point: {tolerance: 0.8 K⟨uncertainty ${shownFact('dew-point/expanded-uncertainty')}⟩`,
    ]);
    expect(hintLines().join()).not.toContain('nothing');
  });

  it('stay inside the stretch that is asked for', () => {
    const start = SITE.indexOf('  hall:');
    expect(hintLines(allKinds, { start, end: SITE.indexOf('points:') })).toHaveLength(1);
    expect(hintLines(new Set())).toEqual([]);
  });

  it('tell on demand how they came about', () => {
    const hint = inlayHints(fennmoor.analysis, whole, new Set(['supply']))[0];
    expect(hint && hintTooltip(fennmoor.analysis, hint.about)).toMatch(
      /^Least voltage at the probe: \*\*23\.1 V\*\*\n- from: /,
    );
    const envelope = inlayHints(fennmoor.analysis, whole, new Set(['envelope']))[0];
    expect(envelope && hintTooltip(fennmoor.analysis, envelope.about)).toMatch(
      /Lowest dew point.*\n[\s\S]*Highest dew point/,
    );
  });
});

describe('code lenses', () => {
  const lenses = (kinds: readonly LensKind[]): readonly string[] =>
    codeLenses(fennmoor.analysis, new Set(kinds)).map(({ above, title, opens }) => {
      const [name, place] = [above, opens].map(({ start, end }) => SITE.slice(start, end).split('\n')[0]);
      return `${name}: ${title} → ${place}`;
    });

  it('of spaces tell the dew point and open the phase in which it is highest', () => {
    expect(lenses(['spaces'])).toEqual(['kiln-2: Dew point 34.7 … 74.9 °C → air', 'hall: Dew point 2 … 18 °C → air']);
  });

  it('of points tell the humidity at the sensor, the uncertainty that takes up most of its tolerance, and the findings', () => {
    const ofPoint = lenses(['points']).filter((line) => line.startsWith('K2-MT-101'));
    expect(ofPoint[0]).toBe('K2-MT-101: At most 64 %RH at the sensor → air');
    expect(ofPoint[1]).toMatch(/^K2-MT-101: Uncertainty of the .* of .* → (3 %RH|0\.8 K)$/);
    expect(ofPoint.at(-1)).toMatch(/^K2-MT-101: (No findings|\d+ (error|warning|information|hint)s?.*) → /);
  });

  it('are none where they are switched off, and none in other files', () => {
    expect(lenses([])).toEqual([]);
    const kit = openAt('kits/fennmoor.dewkit.yaml', `|${FENNMOOR['kits/fennmoor.dewkit.yaml']}`);
    expect(codeLenses(kit.analysis, new Set(['points', 'spaces']))).toEqual([]);
  });

  it('open the gravest finding of the point', () => {
    const site = SITE.replace(
      'heater: {mode: continuous, rise: 8 K, set-at: site}',
      'heater: {mode: continuous, rise: 8 K}',
    );
    const { analysis, parsed } = openAt(
      'fennmoor.dewsite.yaml',
      `|${site.replace('air-temperature: K2-MT-101, ', '')}`,
      FENNMOOR,
    );
    const last = codeLenses(analysis, new Set(['points'])).at(-1);
    const findings = analysis.findings.filter(({ subject }) => subject === 'K2-MT-102');
    const errors = findings.filter(({ severity }) => severity === 'error');
    expect(errors.length).toBeGreaterThan(0);
    expect(last?.title).toMatch(new RegExp(`^${errors.length} error`));
    expect(last?.opens).toEqual(errors[0]?.range);
    expect(parsed.text.slice(last?.above.start, last?.above.end)).toBe('K2-MT-102');
  });
});
