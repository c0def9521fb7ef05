/** A comparison in words: grouped by what it is about, each change in one line. */
import type { ChangedFact } from './changed-facts.ts';
import type { ChangedFinding } from './changed-findings.ts';
import type { ChangedValue } from './changed-values.ts';
import type { Comparison } from './compare-sites.ts';

/** Lines under one heading. */
export interface Told {
  readonly heading: string;
  readonly lines: readonly string[];
}

export interface ToldComparison {
  readonly values: readonly Told[];
  /** Numbers that follow from the same changes stand under the words that name these. */
  readonly facts: readonly Told[];
  readonly findings: readonly Told[];
}

export function tellComparison({ values, facts, findings }: Comparison): ToldComparison {
  return {
    values: grouped(values, subjectOf, valueLine),
    facts: grouped(facts, becauseOf, factLine),
    findings: grouped(findings, ({ subject }) => subject, findingLine),
  };
}

export function comparisonText(comparison: Comparison): string {
  const { values, facts, findings } = tellComparison(comparison);
  const sections = [section('What is stated', values), section('Numbers', facts), section('Findings', findings)];
  const told = sections.filter((text) => text !== '');
  return told.length === 0 ? 'Nothing has changed in meaning.' : told.join('\n\n');
}

export function comparisonJson({ values, facts, findings }: Comparison): string {
  const stated = values.map((change) => ({ ...change, subject: subjectOf(change), path: change.path.join('.') }));
  const numbers = facts.map(({ because, ...fact }) => ({ ...fact, because: because.map(valueInWords) }));
  return JSON.stringify({ version: 1, values: stated, facts: numbers, findings }, undefined, 1);
}

function section(title: string, groups: readonly Told[]): string {
  if (groups.length === 0) return '';
  const told = groups.map(({ heading, lines }) => [`  ${heading}`, ...lines.map((line) => `    ${line}`)].join('\n'));
  return [title, ...told].join('\n').replace(/[^\P{Cc}\n]/gu, '·');
}

function grouped<Item>(
  items: readonly Item[],
  headingOf: (item: Item) => string,
  lineOf: (item: Item) => string,
): readonly Told[] {
  const groups = new Map<string, string[]>();
  for (const item of items) {
    const heading = headingOf(item);
    groups.set(heading, [...(groups.get(heading) ?? []), lineOf(item)]);
  }
  return [...groups].map(([heading, lines]) => ({ heading, lines }));
}

/** The tag, the id of the space or model, or the site; of a whole entry, the map that it is in. */
function subjectOf({ path: [map = '', name] }: ChangedValue): string {
  return map === 'site' || name === undefined ? map : name;
}

function valueLine(change: ChangedValue): string {
  const { kind, path, before = '', after = '' } = change;
  const inner = (path[0] === 'site' ? path.slice(1) : path.slice(2)).join('.');
  const what = inner === '' ? SINGULAR[path[0] ?? ''] : inner;
  switch (kind) {
    case 'added':
      return inner === '' ? `${what}, added` : `${what}: ${after}, added`;
    case 'removed':
      return inner === '' ? `${what}, removed` : `${what}: ${before}, removed`;
    case 'renamed':
      return `${what}, renamed from ${before}`;
    case 'changed':
      return `${what}: ${before} → ${after}`;
  }
}

const SINGULAR: Readonly<Record<string, string>> = { spaces: 'space', points: 'point' };

/** A change as a cause: with its subject. */
function valueInWords(change: ChangedValue): string {
  return `${subjectOf(change)} ${valueLine(change)}`;
}

function becauseOf({ subject, because, inputs }: ChangedFact): string {
  const causes = [
    ...because.map((change) => (subjectOf(change) === subject ? valueLine(change) : valueInWords(change))),
    ...inputs.map(({ label, before, after }) => `${label}: ${before} → ${after}`),
  ];
  return causes.length === 0 ? subject : `${subject}, because ${causes.join('; ')}`;
}

function factLine({ title, before, after }: ChangedFact): string {
  return `${title}: ${before} → ${after}`;
}

const FINDING_WORDS: Readonly<Record<ChangedFinding['kind'], string>> = {
  came: 'came',
  went: 'went',
  accepted: 'accepted',
  reopened: 'no longer accepted',
  reason: 'accepted for another reason',
  severity: 'of another severity',
};

function findingLine({ kind, severity, message, rule, reason }: ChangedFinding): string {
  const why = reason === undefined ? '' : ` Accepted: ${reason}`;
  return `${FINDING_WORDS[kind]}, ${severity}: ${message}${why} [${rule}]`;
}
