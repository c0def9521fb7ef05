import { describe, expect, it } from 'vitest';
import type { Workspace } from '../../server/src/analysis/workspace.ts';
import { writeMarkup } from '../../server/src/base/markup.ts';
import { expandedUncertainty } from '../../server/src/evaluate/budget/uncertainty-facts.ts';
import { type OverviewRow, overviewRows, overviewView } from '../../server/src/views/overview.ts';
import { KIT, SITE } from '../features/fennmoor.ts';
import { uriOf, workspaceOf } from '../features/marked-files.ts';
import { cellsOf, elementsNamed, wordsOf } from './shown-view.ts';

const OTHER = `dewright: 1
site: {id: store, kits: [kits/fennmoor.dewkit.yaml]}
spaces:
  hall: {air: {temperature: 5 .. 32 degC, dew-point: 2 .. 4 degC}}
points:
  S-1: {space: hall, humidity-probe: {model: hp-plain}}
  S-2:
    space: hall
    humidity-probe: {model: hp-heated}
    reports: {dew-point: {}}
    checks: {interval: 12 months, method: laboratory, last: 2026-03-14}
`;

const WORKSPACE = workspaceOf({
  'a.dewsite.yaml': SITE,
  'b.dewsite.yaml': OTHER,
  'kits/fennmoor.dewkit.yaml': KIT,
});

function rowsOf(workspace: Workspace): readonly OverviewRow[] {
  return workspace.files().flatMap((file) => {
    const analysis = workspace.analysis(file);
    return analysis === undefined ? [] : overviewRows(analysis);
  });
}

describe('the overview', () => {
  const view = overviewView(rowsOf(WORKSPACE));
  const [heads, ...rows] = cellsOf(elementsNamed(view.body, 'table')[0]);

  it('has a row for every report of every point of every site, and one for a point that reports nothing', () => {
    expect(rows.map(([point, site, space, quantity]) => [point, site, space, quantity])).toEqual([
      ['K2-MT-101', 'fennmoor', 'kiln-2', 'relative humidity'],
      ['K2-MT-101', 'fennmoor', 'kiln-2', 'dew point'],
      ['K2-MT-102', 'fennmoor', 'kiln-2', 'relative humidity'],
      ['S-1', 'store', 'hall', ''],
      ['S-2', 'store', 'hall', 'dew point'],
    ]);
  });

  it('shows the numbers of the facts, and the part of the tolerance that the uncertainty takes', () => {
    const analysis = WORKSPACE.analysis(uriOf('a.dewsite.yaml'));
    const point = analysis?.content.kind === 'site' ? analysis.content.site.points.get('K2-MT-101') : undefined;
    const uncertainty = point?.facts.get(expandedUncertainty('dew-point'))?.value ?? 0;
    expect(rows[1]?.slice(4, 8)).toEqual([
      `${uncertainty.toFixed(2)} K`,
      '0.8 K',
      `${((uncertainty / 0.8) * 100).toFixed(1)} %`,
      expect.stringMatching(/^[\d.]+ K$/),
    ]);
  });

  it('says how many times a tolerance it is that is far too narrow', () => {
    const narrow = workspaceOf({
      'a.dewsite.yaml': SITE.replace('tolerance: 0.8 K', 'tolerance: 0.01 K'),
      'kits/fennmoor.dewkit.yaml': KIT,
    });
    const shown = cellsOf(elementsNamed(overviewView(rowsOf(narrow)).body, 'table')[0]);
    expect(shown[2]?.slice(5, 7)).toEqual(['0.01 K', expect.stringMatching(/^\d\d ×$/)]);
  });

  it('counts the findings of each point by severity', () => {
    const findings = WORKSPACE.analysis(uriOf('a.dewsite.yaml'))?.findings ?? [];
    const ofPoint = findings.filter(({ subject }) => subject === 'K2-MT-102');
    const inWords = (severity: string): string[] => {
      const count = ofPoint.filter((finding) => finding.severity === severity).length;
      return count === 0 ? [] : [`${count} ${severity}${count > 1 ? 's' : ''}`];
    };
    expect(rows[2]?.[8]).toBe([...inWords('error'), ...inWords('warning'), ...inWords('hint')].join(', '));
    expect(rows[2]?.[8]).not.toBe('');
  });

  it('says when the next check is due', () => {
    expect(rows.at(-1)?.at(-1)).toBe('2027-03-14');
  });

  it('every heading sorts, and every row leads to its point', () => {
    const [table] = elementsNamed(view.body, 'table');
    expect(table?.attributes['data-sorts']).toBe(true);
    expect(elementsNamed(view.body, 'th').map((head) => elementsNamed([head], 'button').map(wordsOf))).toEqual(
      heads?.map((head) => [head]),
    );
    const [filter] = elementsNamed(view.body, 'input');
    expect(filter?.attributes['data-filters']).toBe(table?.attributes.id);
    const places = elementsNamed(view.body, 'span').map(({ attributes }) => [
      attributes['data-file'],
      attributes['data-start'],
    ]);
    expect(places[0]).toEqual([uriOf('a.dewsite.yaml'), SITE.indexOf('K2-MT-101:')]);
    expect(places.at(-1)).toEqual([uriOf('b.dewsite.yaml'), OTHER.indexOf('S-2:')]);
  });

  it('an empty workspace says so', () => {
    expect(overviewView([]).body.map(wordsOf)).toEqual(['All points', 'The workspace has no point.']);
  });

  it('says how many sites are still to be looked at', () => {
    expect(overviewView(rowsOf(WORKSPACE), 3).body.map(wordsOf)).toContain('Sites still to be looked at: 3.');
  });

  it('a tag is text and nothing else', () => {
    const workspace = workspaceOf({
      'c.dewsite.yaml': `dewright: 1\npoints:\n  "<i>&":\n    reports: {dew-point: {}}\n`,
    });
    const written = overviewView(rowsOf(workspace)).body.map(writeMarkup).join('');
    expect(written).toContain('&lt;i&gt;&amp;');
    expect(written).not.toContain('<i>');
  });
});
