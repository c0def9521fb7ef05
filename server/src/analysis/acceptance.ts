/** `# accept RULE-NAME: reason`: findings that a person has looked at and stands by. */
import type { Origin } from '../syntax/nodes.ts';
import type { Finding } from './finding.ts';
import type { ParsedFile } from './parsed-file.ts';

export interface Acceptance {
  readonly rule: string;
  readonly reason: string;
  readonly origin: Origin;
  /** The line whose findings it accepts. */
  readonly line: number;
}

const FORM = /^#\s*accept\s+([a-z0-9-]+)\s*(?::\s*(.*?))?\s*$/;

export function acceptancesOf(file: ParsedFile): readonly Acceptance[] {
  return file.tree.parts.flatMap(({ part, offset }) =>
    part.acceptanceComments.flatMap(({ start, end, text, alone }) => {
      const match = FORM.exec(text);
      if (match === null) return [];
      const line = file.lines.positionAt(offset + start).line + (alone ? 1 : 0);
      return { rule: match[1] ?? '', reason: match[2] ?? '', origin: { part, start, end }, line };
    }),
  );
}

export interface Sorted {
  readonly open: readonly Finding[];
  readonly accepted: readonly AcceptedFinding[];
  readonly unused: readonly Acceptance[];
}

export interface AcceptedFinding extends Finding {
  readonly reason: string;
}

/** An acceptance without a reason accepts nothing. */
export function sortByAcceptance(
  findings: readonly Finding[],
  acceptances: readonly Acceptance[],
  file: ParsedFile,
): Sorted {
  const open: Finding[] = [];
  const accepted: AcceptedFinding[] = [];
  const used = new Set<Acceptance>();
  for (const finding of findings) {
    const { line } = acceptances.length === 0 ? { line: -1 } : file.lines.positionAt(finding.range.start);
    const acceptance = acceptances.find((candidate) => candidate.line === line && candidate.rule === finding.rule);
    if (acceptance === undefined || acceptance.reason === '') {
      open.push(finding);
      if (acceptance !== undefined) used.add(acceptance);
    } else {
      used.add(acceptance);
      accepted.push({ ...finding, reason: acceptance.reason });
    }
  }
  return { open, accepted, unused: acceptances.filter((acceptance) => !used.has(acceptance)) };
}
