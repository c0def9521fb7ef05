/** What is still open, and what was looked at and accepted, with the reason. */
import type { Analysis } from '../analysis/analysis.ts';
import type { Finding } from '../analysis/finding.ts';
import { type Block, type Section, type Text, table, told, words } from './document.ts';

export function findingsSection({ findings, accepted }: Analysis): Section {
  return {
    title: ['Findings'],
    startsPage: true,
    blocks: [...openBlocks(findings), ...acceptedBlocks(accepted)],
  };
}

export function openBlocks(findings: readonly Finding[]): readonly Block[] {
  if (findings.length === 0) return [{ kind: 'paragraph', text: ['Nothing is open.'] }];
  return table(
    'Open',
    ['about', 'severity', 'finding', 'rule'],
    findings.map((finding) => [[words(finding.subject)], [finding.severity], messageOf(finding), [finding.rule]]),
  );
}

function acceptedBlocks(accepted: Analysis['accepted']): readonly Block[] {
  return table(
    'Accepted',
    ['about', 'reason', 'finding', 'rule'],
    accepted.map((finding) => [[words(finding.subject)], [words(finding.reason)], messageOf(finding), [finding.rule]]),
  );
}

function messageOf({ message, subject, facts }: Finding): Text {
  return [told(message, subject, facts)];
}
