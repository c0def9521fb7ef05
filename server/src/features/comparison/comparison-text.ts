/** A comparison in words: grouped by what it is about, each change in one line. */
import { groupedBy } from '../../base/grouped.ts';
import type { ChangedFact } from './changed-facts.ts';
import type { ChangedFinding } from './changed-findings.ts';
import type { ChangedValue } from './changed-values.ts';
import type { Comparison } from './compare-sites.ts';

export interface ToldSection {
  readonly title: string;
  readonly groups: readonly ToldGroup[];
}

export interface ToldGroup {
  /** What the lines are about; over numbers also the changes that they follow from. */
  readonly heading: string;
  readonly lines: readonly string[];
}

export const NOTHING_CHANGED = 'Nothing has changed in meaning.';

/** The sections in which there is something to tell. */
export function tellComparison({ values, facts, findings }: Comparison): readonly ToldSection[] {
  const sections = [
    { title: 'What is stated', groups: grouped(values, subjectOf, valueLine) },
    { title: 'Numbers', groups: grouped(facts, becauseOf, factLine) },
    { title: 'Findings', groups: grouped(findings, ({ subject }) => subject, findingLine) },
  ];
  return sections.filter(({ groups }) => groups.length > 0);
}

export function comparisonText(comparison: Comparison): string {
  const sections = tellComparison(comparison);
  return sections.length === 0 ? NOTHING_CHANGED : sections.map(sectionText).join('\n\n');
}

export function comparisonJson({ values, facts, findings }: Comparison): string {
  const stated = values.map((change) => ({ ...change, subject: subjectOf(change), path: change.path.join('.') }));
  const numbers = facts.map(({ because, ...fact }) => ({ ...fact, because: because.map(valueInWords) }));
  return JSON.stringify({ version: 1, values: stated, facts: numbers, findings }, undefined, 1);
}

function sectionText({ title, groups }: ToldSection): string {
  const told = groups.map(({ heading, lines }) => [`  ${heading}`, ...lines.map((line) => `    ${line}`)].join('\n'));
  return [title, ...told].join('\n').replace(/[^\P{Cc}\n]/gu, '·');
}

function grouped<Item>(
  items: readonly Item[],
  headingOf: (item: Item) => string,
  lineOf: (item: Item) => string,
): readonly ToldGroup[] {
  return [...groupedBy(items, headingOf)].map(([heading, about]) => ({ heading, lines: about.map(lineOf) }));
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
