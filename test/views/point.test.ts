import { describe, expect, it } from 'vitest';
import { writeMarkup } from '../../server/src/base/markup.ts';
import { isKnown, showFact } from '../../server/src/evaluate/facts/fact.ts';
import { pointView } from '../../server/src/views/point.ts';
import { factsById } from '../evaluate/facts-by-id.ts';
import { SITE } from '../features/fennmoor.ts';
import { cellsOf, elementsNamed, fennmoorAt, listBehind, show, wordsOf } from './shown-view.ts';

describe('the point view', () => {
  it.each([
    ['in a point', 'rise: 8 K, set-at: site', 'Point: K2-MT-102'],
    ['in a space, its first point', 'humidity: 35 .. 88', 'Point: K2-MT-101'],
    ['elsewhere, the first point of the file', 'title: Fennmoor', 'Point: K2-MT-101'],
  ])('%s: %s', (_where, words, title) => {
    expect(show(pointView, fennmoorAt(words)).title).toBe(title);
  });

  it('lists what is found at the point, each leading to its place', () => {
    const marked = fennmoorAt('K2-MT-102:');
    const view = show(pointView, marked);
    const own = marked.analysis.findings.filter(({ subject }) => subject === 'K2-MT-102');
    expect(listBehind(view, 'Findings')).toEqual(
      own.map(({ severity, message, rule }) => `${severity}: ${message} (${rule})`),
    );
    const starts = elementsNamed(view.body, 'li')
      .flatMap((item) => elementsNamed([item], 'span'))
      .map(({ attributes }) => attributes['data-start']);
    expect(starts).toEqual(own.map(({ range }) => range.start));
  });

  it('tells the expected state in the numbers of the facts', () => {
    const marked = fennmoorAt('K2-MT-101:');
    const { content } = marked.analysis;
    const facts = factsById(content.kind === 'site' ? content.site.points.get('K2-MT-101') : undefined);
    const [, ...rows] = cellsOf(elementsNamed(show(pointView, marked).body, 'table')[0]);
    const told = [...facts.values()].filter(isKnown).map((fact) => [fact.title.toLowerCase(), showFact(fact)]);
    expect(rows.length).toBeGreaterThan(5);
    for (const [title = '', value] of rows) expect(told).toContainEqual([title.toLowerCase(), value]);
  });

  it('draws the section, a budget for every report, and the errors that the visits found', () => {
    const view = show(pointView, fennmoorAt('K2-MT-101:'));
    expect(elementsNamed(view.body, 'svg').map(({ attributes }) => attributes['aria-label'])).toEqual([
      'Section of K2-MT-101',
      expect.stringMatching(/^Uncertainty of the relative humidity at/),
      expect.stringMatching(/^Uncertainty of the dew point at/),
      'Errors of the dew point over the years',
    ]);
  });

  it('says why a report has no budget', () => {
    const view = show(
      pointView,
      fennmoorAt('K2-MT-101:', SITE.replace('{air-temperature: air-temperature-probe, ', '{')),
    );
    const words = 'No uncertainty can be computed: nothing measures the air temperature for it.';
    expect(view.body.map(wordsOf)).toContain(words);
  });

  it('says what is lacking where no section can be drawn', () => {
    const view = show(pointView, fennmoorAt('K2-MT-102:'));
    expect(view.body.map(wordsOf)).toContain('No section can be drawn: no insertion of the humidity probe is given.');
  });

  it('of a file without points says so', () => {
    const view = show(pointView, fennmoorAt('dewright', 'dewright: 1\nsite: {id: fennmoor}\n'));
    expect(view.body.map(wordsOf)).toEqual(['Point', 'The file has no point that can be read.']);
  });

  it('shows a title from the file as text', () => {
    const marked = fennmoorAt('K2-MT-101:', SITE.replace('Kiln 2, air on the load', '"<script>&"'));
    expect(show(pointView, marked).body.map(writeMarkup).join('')).toContain('<h1>K2-MT-101, &lt;script&gt;&amp;</h1>');
  });
});
