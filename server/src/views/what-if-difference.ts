/** What changes from one analysis to another: the numbers of one point and its space, and the findings of the file. */

import type { Analysis } from '../analysis/analysis.ts';
import type { Finding } from '../analysis/finding.ts';
import { factsOfPoint } from '../evaluate/all-facts.ts';
import { type Fact, isKnown, showFact } from '../evaluate/facts/fact.ts';
import { factsOfSpace } from '../features/support/subject-facts.ts';

export interface TriedFact {
  readonly title: string;
  readonly before: string;
  readonly after: string;
}

/** Facts of which another text is shown, in the order of the point, then of its space. */
export function triedFacts(before: Analysis, after: Analysis, tag: string): readonly TriedFact[] {
  const [old, now] = [factsAbout(before, tag), factsAbout(after, tag)];
  return [...new Set([...old.keys(), ...now.keys()])].flatMap((id) => {
    const title = now.get(id)?.title ?? old.get(id)?.title ?? id;
    const [oldText, newText] = [shown(old.get(id)), shown(now.get(id))];
    return oldText === newText ? [] : [{ title, before: oldText, after: newText }];
  });
}

function factsAbout({ content }: Analysis, tag: string): ReadonlyMap<string, Fact> {
  const point = content.kind === 'site' ? content.site.points.get(tag) : undefined;
  if (point === undefined) return new Map();
  const ofSpace = point.space === undefined ? [] : factsOfSpace(point.space);
  const own = factsOfPoint(point);
  return new Map([...own, ...ofSpace].map((fact) => [fact.id, fact]));
}

function shown(fact: Fact | undefined): string {
  if (fact === undefined) return '';
  return isKnown(fact) ? showFact(fact) : (fact.missing ?? 'not known');
}

export interface TriedFindings {
  readonly gone: readonly Finding[];
  readonly come: readonly Finding[];
  /** The same rule at the same subject with another message: the later finding. */
  readonly changed: readonly Finding[];
}

export function triedFindings(before: Analysis, after: Analysis): TriedFindings {
  const [old, now] = [
    withoutPairs(before.findings, after.findings, inWords),
    withoutPairs(after.findings, before.findings, inWords),
  ];
  const gone = withoutPairs(old, now, ofRule);
  const come = withoutPairs(now, old, ofRule);
  return { gone, come, changed: now.filter((finding) => !come.includes(finding)) };
}

function ofRule({ rule, subject }: Finding): string {
  return `${rule} ${subject}`;
}

function inWords(finding: Finding): string {
  return `${ofRule(finding)} ${finding.severity} ${finding.message}`;
}

/** Those of the first that are left when each of the others has taken away one that is called the same. */
function withoutPairs(
  findings: readonly Finding[],
  others: readonly Finding[],
  nameOf: (finding: Finding) => string,
): readonly Finding[] {
  const left = new Map<string, number>();
  for (const other of others) left.set(nameOf(other), (left.get(nameOf(other)) ?? 0) + 1);
  return findings.filter((finding) => {
    const count = left.get(nameOf(finding)) ?? 0;
    left.set(nameOf(finding), count - 1);
    return count <= 0;
  });
}
