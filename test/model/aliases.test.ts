import { describe, expect, it } from 'vitest';
import { siteModelOf } from '../../server/src/model/file-models.ts';
import type { Origin } from '../../server/src/syntax/nodes.ts';
import { problemsOf, read } from './problems.ts';

const HEAD = 'dewright: 1\nsite: {id: fennmoor}\n';

describe('anchors, aliases and merge keys', () => {
  const text = [
    `${HEAD}spaces:`,
    '  kiln-1: &kiln',
    '    air: &air {temperature: 55 .. 78 degC, humidity: 35 .. 88 %RH}',
    '    gradient: 0.8 K/m',
    '  kiln-2: {air: *air}',
    '  kiln-3:',
    '    <<: *kiln',
    '    gradient: 1.2 K/m',
    '',
  ].join('\n');
  const file = read(text);
  const { spaces } = siteModelOf(file.model);
  const shown = (origin: Origin | undefined): string | undefined => {
    if (origin === undefined) return undefined;
    const { start, end } = file.rangeOf(origin);
    return text.slice(start, end);
  };

  it('are read without a problem', () => {
    expect(problemsOf(text)).toEqual([]);
    expect([...spaces.keys()]).toEqual(['kiln-1', 'kiln-2', 'kiln-3']);
  });

  it('a value inside an alias points at the alias, and at where it is defined', () => {
    const temperature = spaces.get('kiln-2')?.located?.value.air?.value.temperature;
    expect(temperature?.value).toMatchObject({ low: 55, high: 78 });
    expect(shown(temperature?.origin)).toBe('*air');
    expect(shown(temperature?.origin.definedAt)).toBe('55 .. 78 degC');
  });

  it('a merged value points at the merge, an own one at itself', () => {
    const space = spaces.get('kiln-3')?.located?.value;
    expect(shown(space?.air?.origin)).toBe('*kiln');
    expect(shown(space?.gradient?.origin)).toBe('1.2 K/m');
  });
});

describe('a problem inside an alias', () => {
  it('points at the alias, and offers no edit there: it would change the anchor for all', () => {
    const text = [
      `${HEAD}spaces:`,
      '  kiln-1: {air: {temperature: &t 78 .. 55 degC, humidity: 80 %RH}}',
      '  kiln-2: {air: {temperature: *t, humidity: 80 %RH}}',
      '',
    ].join('\n');
    expect(problemsOf(text)).toMatchObject([
      { subject: 'kiln-1', marked: '78 .. 55', fixes: ['Write 55 .. 78 degC (safe)'] },
      { subject: 'kiln-2', marked: '*t', fixes: [] },
    ]);
  });

  it('an unknown key that is merged points at the merge, and is renamed nowhere', () => {
    const text = [
      `${HEAD}spaces:`,
      '  kiln-1: &kiln {air: {temperature: 60 degC, humidity: 80 %RH}, presure: 99 kPa}',
      '  kiln-2: {<<: *kiln}',
      '',
    ].join('\n');
    expect(problemsOf(text)).toMatchObject([
      { subject: 'kiln-1', marked: 'presure', fixes: ['Change to “pressure” (safe)', 'Remove “presure”'] },
      { subject: 'kiln-2', marked: '*kiln', fixes: [] },
    ]);
  });

  it('an alias without its anchor is said once', () => {
    const text = `${HEAD}spaces:\n  kiln-2: {air: *air}\n`;
    expect(problemsOf(text)).toMatchObject([
      { rule: 'yaml-syntax', marked: '*air', sentence: 'The alias “*air” has no anchor “&air” above it' },
    ]);
  });
});

describe('an alias bomb', () => {
  const level = (depth: number): string => `  a${depth}: &a${depth} [${`*a${depth - 1}, `.repeat(10)}]`;

  it('is one problem of its entry, in no time', () => {
    const levels = Array.from({ length: 9 }, (_, index) => level(index + 1));
    const text = [`${HEAD}spaces:`, '  a0: &a0 [x]', ...levels, '  kiln-2: {exposure: *a9}', ''].join('\n');
    const problems = problemsOf(text).filter(({ subject }) => subject === 'kiln-2');
    expect(problems).toMatchObject([
      {
        rule: 'yaml-syntax',
        marked: 'kiln-2',
        sentence: 'Aliases here unfold to more values than any file needs, and the entry is not checked',
      },
    ]);
  });
});

describe('a key given twice', () => {
  it.each([
    ['at the top level', `${HEAD}site: {id: other}\n`, 'site', 'site'],
    ['among the entries', `${HEAD}spaces:\n  a: {air: {temperature: 6 degC, humidity: 8 %RH}}\n  a: {}\n`, 'a', 'a'],
    [
      'inside an entry',
      `${HEAD}spaces:\n  a: {title: x, air: {temperature: 6 degC, humidity: 8 %RH}, title: y}\n`,
      'title',
      'title',
    ],
  ])('%s points at the first', (_, text, marked, related) => {
    const twice = problemsOf(text).filter(({ rule }) => rule === 'yaml-syntax');
    expect(twice).toMatchObject([{ marked, related, sentence: `“${marked}” is given twice; the first one counts` }]);
  });
});
