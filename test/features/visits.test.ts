import { describe, expect, it } from 'vitest';
import { definitionAt, fileLinks, referencesAt } from '../../server/src/features/moving/definition.ts';
import { rename } from '../../server/src/features/moving/rename.ts';
import { codeLenses, LENS_KINDS } from '../../server/src/features/reading/code-lenses.ts';
import { hoverAt } from '../../server/src/features/reading/hover.ts';
import { HINT_KINDS, hintTooltip, inlayHints } from '../../server/src/features/reading/inlay-hints.ts';
import { type OutlineItem, outlineOf } from '../../server/src/features/reading/outline.ts';
import { completionsAt } from '../../server/src/features/writing/completion/completion.ts';
import { type CompletionItem, plainText } from '../../server/src/features/writing/completion/completion-item.ts';
import { fixesAt } from '../../server/src/features/writing/fixes.ts';
import { cursorIn, FENNMOOR, SITE } from './fennmoor.ts';
import { edited, type Marked, openAt, shown } from './marked-files.ts';

const NAME = 'first.dewvisit.yaml';

const VISIT = `dewright: 1
visit: {site: fennmoor, date: 2026-09-02, purpose: commissioning}
steps:
  heater-on: {point: K2-MT-101, done: true}
  supply-measured: {point: K2-MT-101, done: false}
  heater-on-K2-MT-102: {point: K2-MT-102, done: true}
readings:
  - {point: K2-MT-101, quantity: dew-point, shown: 58.9 degC, reference: 58.4 degC, reference-uncertainty: 0.3 K}
  - {point: K2-MT-101, quantity: dew-point, shown: 61.2 degC, reference: 58.4 degC, reference-uncertainty: 0.3 K}
  - {point: K2-MT-101, quantity: relative-humidity, shown: 61.2 %RH, reference: 60 %RH}
settings:
  - {point: K2-MT-101, heater: continuous, AO1.span: 0 .. 80 %RH}
  - {point: K2-MT-102, relative-humidity.air-temperature: K2-MT-101}
log: logs/kiln-2.csv
`;

const visit = (words: string): Marked => openAt(NAME, cursorIn(VISIT, words), FENNMOOR);
const typed = (words: string, instead: string): Marked => openAt(NAME, VISIT.replace(words, instead), FENNMOOR);

function items({ workspace, analysis, offset }: Marked): readonly CompletionItem[] {
  return completionsAt(workspace, analysis, offset).items;
}

const labels = (marked: Marked): readonly string[] => items(marked).map(({ label }) => label);
const hover = ({ analysis, offset }: Marked): string => hoverAt(analysis, offset)?.markdown ?? '';

describe('completion in a visit', () => {
  it('offers the site with its title', () => {
    expect(items(typed('site: fennmoor', 'site: |'))[0]).toMatchObject({
      label: 'fennmoor',
      detail: 'Fennmoor Timber',
    });
  });

  it('offers the points of the site, and of a point what it reports first', () => {
    expect(labels(typed('point: K2-MT-102, done', 'point: |, done'))).toEqual(['K2-MT-101', 'K2-MT-102']);
    const quantities = items(typed('quantity: dew-point, shown: 58.9', 'quantity: |, shown: 58.9'));
    expect(quantities.slice(0, 2).map(({ label }) => label)).toEqual(['relative-humidity', 'dew-point']);
    expect(quantities[2]?.detail).toBe('not reported by this point');
  });

  it('offers the salts with what they give at the temperature of the reading', () => {
    const reading = 'reference: 60 %RH}';
    const salts = items(typed(reading, 'reference: 60 %RH, at: 20 degC, using: saturated-salt |}'));
    // OIML R 121:1996, table 1, 20 °C: 75.5 %RH.
    expect(salts.find(({ label }) => label === 'NaCl')?.detail).toBe('75.5 %RH, sodium chloride');
  });

  it('offers the open steps of the handover with what should be seen, each under a key that is free', () => {
    const offered = items(typed('readings:', '  |\nreadings:'));
    const first = offered[0];
    expect(first?.label).toBe('humidity-probe-fitted');
    expect(first?.detail).toBe('K2-MT-101');
    expect(first?.documentation).toContain('**What should be seen**');
    expect(plainText(first?.insert ?? [])).toBe('humidity-probe-fitted: {point: K2-MT-101, done: true}');
    expect(offered.map(({ label }) => label)).toContain('head-rise-seen-K2-MT-102');
    expect(offered.map(({ label }) => label)).not.toContain('heater-on');
  });

  it('offers what can be set at the point, with what the site file says', () => {
    const offered = items(typed(', AO1.span: 0 .. 80 %RH', ', |'));
    expect(offered.map(({ label, detail }) => `${label} ${detail}`)).toEqual([
      'heater.rise 8 K',
      'humidity-probe.serial A1001',
      'air-temperature-probe.serial T2001',
      'relative-humidity.air-temperature air-temperature-probe',
      'relative-humidity.pressure undefined',
      'relative-humidity.at-pressure undefined',
      'dew-point.air-temperature undefined',
      'dew-point.pressure undefined',
      'dew-point.at-pressure undefined',
      'AO1.quantity relative-humidity',
      'AO1.current 4 … 20 mA, built in',
      'AO1.span 0 … 100 %RH',
      'AO1.on-fault undefined',
    ]);
  });

  it('offers the value that the site file has first, and the words that there are', () => {
    expect(labels(typed('AO1.span: 0 .. 80 %RH', 'AO1.span: |'))[0]).toBe('0 .. 100 %RH');
    expect(labels(typed('heater: continuous', 'heater: |'))).toEqual(['continuous', 'off', 'on-demand']);
  });
});

describe('the hover in a visit', () => {
  it('tells of a step what is done and what should be seen', () => {
    const text = hover(visit('heater|-on: '));
    expect(text).toContain('The heater was ordered switched on');
    expect(text).toMatch(/notice of low supply is to be expected: it is no fault/);
    expect(text).toContain('Done, as of 2026\\-09\\-02');
  });

  it('tells of a reading the En number, both uncertainties and the history', () => {
    const text = hover(visit('shown: 61|.2 degC'));
    expect(text).toMatch(/\*\*En [\d.]+\*\*: the two disagree/);
    expect(text).toMatch(/Expanded uncertainty of the reference: \*\*0\.3 K\*\*/);
    expect(text).toMatch(/Expanded uncertainty of the dew point that the point showed: \*\*[\d.]+ K\*\*/);
    expect(text).toContain('against its references');
  });

  it('tells of a pair without the uncertainty of its reference that nobody can tell', () => {
    expect(hover(visit('reference: |60 %RH'))).toContain('that of the reference is not known');
  });

  it('tells of a setting what the site file says', () => {
    expect(hover(visit('AO1|.span'))).toContain('The site file says `0 … 100 %RH`, and the instrument differs.');
    expect(hover(visit('heater: conti|nuous'))).toContain('The site file says `continuous`, as the instrument has it.');
  });
});

describe('names in a visit', () => {
  it.each([
    ['the site', visit('site: fenn|moor'), 'fennmoor.dewsite.yaml:3 fennmoor'],
    ['the point behind the name of a step', visit('heater-on-K2|-MT-102'), 'fennmoor.dewsite.yaml:33 K2-MT-102'],
    ['a point in a setting', visit('air-temperature: K2-MT|-101'), 'fennmoor.dewsite.yaml:18 K2-MT-101'],
  ])('%s is found where it is given', (_, { workspace, parsed, offset }, expected) => {
    const found = definitionAt(workspace, parsed, offset);
    expect(found && shown(workspace, found.file, found.range)).toBe(expected);
  });

  it('a tag is renamed in steps, readings and settings too', () => {
    const { workspace, parsed, offset } = openAt('fennmoor.dewsite.yaml', cursorIn(SITE, '  K2-MT|-102:'), {
      ...FENNMOOR,
      [NAME]: VISIT,
    });
    const outcome = rename(workspace, parsed, offset, 'K2-MT-202');
    expect(outcome.ok && edited(workspace, outcome.value)[NAME]).toBe(VISIT.replaceAll('K2-MT-102', 'K2-MT-202'));
    expect(referencesAt(workspace, parsed, offset, false).map(({ range }) => range).length).toBe(3);
  });

  it('the recording is a link to its file', () => {
    const { parsed, text } = visit('log|:');
    const links = fileLinks(parsed).map(({ range, target, tooltip }) => [
      text.slice(range.start, range.end),
      target,
      tooltip,
    ]);
    expect(links).toEqual([['logs/kiln-2.csv', 'file:///logs/kiln-2.csv', 'Open the recording']]);
  });
});

describe('what stands beside a visit', () => {
  const whole = { start: 0, end: VISIT.length };

  it('above it: how many readings disagree, and how many steps are open', () => {
    const { analysis, text } = visit('visit|:');
    const lenses = codeLenses(analysis, new Set(LENS_KINDS));
    expect(lenses.map(({ title }) => title)).toEqual([
      '1 of 2 readings disagrees',
      '8 of 10 steps of the handover are open',
    ]);
    expect(lenses.map(({ opens }) => text.slice(opens.start, opens.end).split(',')[2])).toEqual([
      ' shown: 61.2 degC',
      undefined,
    ]);
    expect(codeLenses(analysis, new Set(['points']))).toEqual([]);
  });

  it('behind a reading: its En number, with its derivation on demand', () => {
    const { analysis, text } = visit('visit|:');
    const hints = inlayHints(analysis, whole, new Set(HINT_KINDS));
    expect(hints.map(({ at, label }) => `${text.slice(at - 9, at)}⟨${label.replace(/[\d.]+/, '#')}⟩`)).toEqual([
      '58.9 degC⟨En #⟩',
      '61.2 degC⟨En #⟩',
    ]);
    expect(hintTooltip(analysis, hints[1]?.about ?? { kind: 'reading', name: '', fact: '' })).toContain('ISO 13528');
    expect(inlayHints(analysis, whole, new Set(['heater']))).toEqual([]);
  });

  it('in the outline: steps with their state, readings with their En number', () => {
    const { analysis } = visit('visit|:');
    const details = (item: OutlineItem): readonly string[] => [
      `${item.name}: ${item.detail}`,
      ...item.children.flatMap(details),
    ];
    const lines = outlineOf(analysis).flatMap(details);
    expect(lines).toContain('supply-measured: K2-MT-101, open');
    expect(lines).toContain('heater-on: K2-MT-101, done');
    expect(lines.some((line) => /^K2-MT-101: dew-point, En 0\.\d+$/.test(line))).toBe(true);
    expect(lines).toContain('K2-MT-101: relative-humidity');
  });

  it('at a setting that differs: the fix that changes the site file', () => {
    const { analysis, workspace, offset } = visit('AO1.span: 0| .. 80 %RH');
    const [offered] = fixesAt(analysis, { start: offset, end: offset });
    expect(offered?.fix.title).toBe('Set the site file to the instrument: AO1.span 0 … 80 %RH');
    expect(edited(workspace, offered?.fix.edits ?? [])['fennmoor.dewsite.yaml']).toContain('span: 0 .. 80 %RH');
  });
});
