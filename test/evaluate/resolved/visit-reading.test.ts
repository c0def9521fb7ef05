import { describe, expect, it } from 'vitest';
import { fileUri } from '../../../server/src/analysis/file-location.ts';
import { Workspace } from '../../../server/src/analysis/workspace.ts';
import type { VisitReading } from '../../../server/src/evaluate/resolved/visit-reading.ts';

const SITE = `dewright: 1
site: {id: fennmoor, defaults: {coverage: 3}}
points:
  P-1: {reports: {relative-humidity: {}}}
  P-2: {reports: {relative-humidity: {}}}
`;

/** The readings of P-1 in a workspace with these visits, each by its date and its readings in flow style. */
function readingsOf(
  visits: readonly (readonly [date: string, ...readings: readonly string[]])[],
): readonly VisitReading[] {
  const workspace = new Workspace();
  const site = fileUri('/fennmoor/fennmoor.dewsite.yaml');
  workspace.set(site, SITE);
  for (const [index, [date, ...readings]] of visits.entries()) {
    const lines = readings.map((reading) => `  - {${reading}}\n`).join('');
    workspace.set(
      fileUri(`/fennmoor/v${index}.dewvisit.yaml`),
      `dewright: 1\nvisit: {site: fennmoor, date: ${date}}\nreadings:\n${lines}`,
    );
  }
  const content = workspace.analysis(site)?.content;
  return (content?.kind === 'site' ? content.site.points.get('P-1')?.readings : undefined) ?? [];
}

const PAIR = 'quantity: relative-humidity, shown: 74.6 %RH, reference: 75.3 %RH';

describe('the readings of a point', () => {
  it('come from all visits to its site, the oldest first', () => {
    const dates = readingsOf([
      ['2026-09-02', `point: P-1, ${PAIR}`],
      ['2024-09-01', `point: P-1, ${PAIR}`, `point: P-2, ${PAIR}`],
      ['2025-09-01', `point: P-1, ${PAIR}`],
    ]).map(({ date }) => date);
    expect(dates).toEqual(['2024-09-01', '2025-09-01', '2026-09-02']);
  });

  it('are in the units of the program', () => {
    const [reading] = readingsOf([['2026-09-02', `point: P-1, ${PAIR}, at: 77 degF, state: as-left, heater: off`]]);
    expect(reading?.shown).toBeCloseTo(0.746, 12);
    expect(reading?.reference).toBeCloseTo(0.753, 12);
    expect(reading?.atCelsius).toBeCloseTo(25, 9);
    expect(reading).toMatchObject({ tag: 'P-1', state: 'as-left', heater: 'off', using: undefined });
  });

  it.each([
    ['no day of the calendar', '2026-09-31', `point: P-1, ${PAIR}`],
    ['a value without a unit', '2026-09-02', `point: P-1, ${PAIR.replace('74.6 %RH', '74.6')}`],
    ['no reference', '2026-09-02', 'point: P-1, quantity: relative-humidity, shown: 74.6 %RH'],
  ])('leave out one with %s', (_, date, reading) => {
    expect(readingsOf([[date, reading]])).toEqual([]);
  });
});

describe('the uncertainty of a reference', () => {
  const uncertaintyOf = (more: string): number | undefined =>
    readingsOf([['2026-09-02', `point: P-1, ${PAIR}, ${more}`]])[0]?.referenceUncertainty;

  it('is what is written, at the coverage of the site', () => {
    expect(uncertaintyOf('reference-uncertainty: 1.2 %RH, using: saturated-salt NaCl, at: 25 degC')).toBeCloseTo(
      0.012,
      12,
    );
  });

  it('is over a salt that of its table, from coverage 2 to that of the site', () => {
    // OIML R 121:1996, table 1: K2SO4 at 25 °C, 97.3 ± 0.5 %RH with coverage 2; the site has 3.
    const table = uncertaintyOf('using: saturated-salt K2SO4, at: 25 degC');
    expect(table).toBeCloseTo((0.005 / 2) * 3, 12);
  });

  it.each([
    ['without the temperature of the salt', 'using: saturated-salt NaCl'],
    ['outside the temperatures of the salt', 'using: saturated-salt NaCl, at: 95 degC'],
    ['of an instrument that says nothing of it', 'using: reference-instrument'],
    ['that is written and cannot be read', 'reference-uncertainty: 1.2, using: saturated-salt NaCl, at: 25 degC'],
  ])('is not known %s', (_, more) => {
    expect(uncertaintyOf(more)).toBeUndefined();
  });
});
