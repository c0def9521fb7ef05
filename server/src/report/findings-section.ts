/** What is still open, and what was looked at and accepted, with the reason. */
import type { Analysis } from '../analysis/analysis.ts';
import type { Finding } from '../analysis/finding.ts';
import { subjectFacts } from '../features/support/subject-facts.ts';
import { type Block, paragraph, type Section, type Text, table, told, words } from './document.ts';

/** Open findings of a point stand with the point. @param tags of the points */
export function findingsSection(analysis: Analysis, tags: ReadonlyMap<string, unknown>): Section {
  const { findings, accepted } = analysis;
  return {
    title: ['Findings of the site and its spaces, and what was accepted'],
    startsPage: true,
    blocks: [
      ...openFindings(
        findings.filter(({ subject }) => !tags.has(subject)),
        analysis,
        ['about', 'severity', 'finding', 'rule'],
      ),
      ...table(
        'Accepted',
        ['about', 'reason', 'finding', 'rule'],
        accepted.map((finding) => [
          [words(finding.subject)],
          [words(finding.reason)],
          message(finding, analysis),
          [finding.rule],
        ]),
      ),
    ],
  };
}

export function openAt(tag: string, analysis: Analysis): readonly Block[] {
  return openFindings(
    analysis.findings.filter(({ subject }) => subject === tag),
    analysis,
    ['severity', 'finding', 'rule'],
  );
}

/** @param head which columns it has, up to all four: about, severity, finding, rule */
function openFindings(findings: readonly Finding[], analysis: Analysis, head: readonly string[]): readonly Block[] {
  if (findings.length === 0) return [paragraph('Nothing is open.')];
  return table(
    'Open',
    head,
    findings.map((finding) => {
      const cells = [[words(finding.subject)], [finding.severity], message(finding, analysis), [finding.rule]];
      return cells.slice(-head.length);
    }),
  );
}

/** A finding about a space may name a number of a point: only those of its own subject are marked as facts. */
function message({ message, subject, facts }: Finding, analysis: Analysis): Text {
  const own = subjectFacts(analysis).find((candidate) => candidate.subject === subject)?.facts ?? [];
  const ids = new Set(own.map(({ id }) => id));
  const marked = facts.filter(({ id }) => ids.has(id)).map((fact) => ({ subject, fact }));
  return [told(message, marked)];
}
