import { describe, expect, it } from 'vitest';
import { humidityAtSensor } from '../../server/src/evaluate/dryness/dryness.ts';
import { readMarks } from '../rules/fixture.ts';
import { analyseCorpusFile, corpusFiles, markOf, readCorpusFile } from './corpus-files.ts';

describe('the corpus', () => {
  it('has at least twenty sound and twenty faulty sites', () => {
    expect(corpusFiles('sound').length).toBeGreaterThanOrEqual(20);
    expect(corpusFiles('faulty').length).toBeGreaterThanOrEqual(20);
  });

  it.each(corpusFiles('kits'))('kit %s has no findings', (file) => {
    expect(analyseCorpusFile('kits', file).findings).toEqual([]);
  });

  it('gives every site an id and every point a tag of its own', () => {
    const sites = (['sound', 'faulty'] as const).flatMap((part) =>
      corpusFiles(part).map(
        (file) => analyseCorpusFile(part, file, readMarks(readCorpusFile(part, file)).text).content,
      ),
    );
    const names = sites.flatMap((content) =>
      content.kind === 'site' ? [content.site.settings.id, ...content.site.points.keys()] : [],
    );
    expect(new Set(names).size).toBe(names.length);
  });
});

describe('a sound site', () => {
  it.each(corpusFiles('sound'))('%s has no error and no warning', (file) => {
    const { findings } = analyseCorpusFile('sound', file);
    const serious = findings.filter(({ severity }) => severity === 'error' || severity === 'warning');
    expect(serious.map(({ rule, message }) => `${rule}: ${message}`)).toEqual([]);
  });

  it.each(corpusFiles('sound'))('%s has at least one point whose numbers are computed', (file) => {
    const { content } = analyseCorpusFile('sound', file);
    const points = content.kind === 'site' ? [...content.site.points.values()] : [];
    expect(points.length).toBeGreaterThan(0);
    for (const { facts } of points) expect(facts.get(humidityAtSensor)?.value).toBeGreaterThan(0);
  });
});

describe('a faulty site', () => {
  it.each(corpusFiles('faulty'))('%s has exactly the findings marked', (file) => {
    const { text, expected } = readMarks(readCorpusFile('faulty', file));
    const found = analyseCorpusFile('faulty', file, text).findings.map((finding) => markOf(finding, text));
    expect(expected.length).toBeGreaterThan(0);
    expect(found.map(inWords).toSorted()).toEqual(expected.map(inWords).toSorted());
  });
});

/** One line per finding, so that a difference reads as one. Lines and columns as editors count them, from 1. */
function inWords({ line, start, end, severity, rule }: ReturnType<typeof markOf>): string {
  return `${String(line + 1).padStart(3)}:${start + 1}-${end + 1} ${severity} ${rule}`;
}
