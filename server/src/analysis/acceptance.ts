/** `# accept RULE-NAME: reason`: findings that a person has looked at and stands by. */
import { isRuleName } from '../rules/rule-names.ts';
import type { Origin } from '../syntax/nodes.ts';
import type { Finding } from './finding.ts';
import type { ParsedFile } from './parsed-file.ts';

export interface Acceptance {
  readonly rule: string;
  readonly reason: string;
  readonly origin: Origin;
  /** The comment as it was typed. */
  readonly text: string;
  /** The line whose findings it accepts. */
  readonly line: number;
  /** The point or space that this line belongs to; undefined where that is none. */
  readonly subject: string | undefined;
}

const FORM = /^#\s*accept\s+([a-z0-9-]+)\s*(.*?)\s*$/;

export function acceptancesOf(file: ParsedFile): readonly Acceptance[] {
  const commented = file.tree.parts.filter(({ part }) => part.acceptanceComments.length > 0);
  return commented.flatMap(({ part, offset }) =>
    part.acceptanceComments.flatMap(({ start, end, text, alone }) => {
      const accepts = readAcceptance(text);
      if (accepts === undefined) return [];
      const { line } = file.lines.positionAt(offset + start);
      const accepted = alone ? firstLineBelow(line, file) : line;
      const subject = entryAt(accepted, file);
      return { ...accepts, origin: { part, start, end }, text, line: accepted, subject };
    }),
  );
}

/** Several acceptances may stand above one line, and other comments among them. */
function firstLineBelow(comment: number, { text, lines }: ParsedFile): number {
  let line = comment + 1;
  while (line < lines.lineCount && /^[ \t]*#/.test(text.slice(lines.offsetAt({ line, character: 0 })))) line++;
  return line;
}

function entryAt(line: number, { lines, tree }: ParsedFile): string | undefined {
  const offset = lines.offsetAt({ line, character: 0 });
  return tree.parts.findLast((placed) => placed.offset <= offset)?.part.path[1];
}

/** Without its colon it was still meant to accept where it names a rule; other words are a comment like any other. */
function readAcceptance(comment: string): Pick<Acceptance, 'rule' | 'reason'> | undefined {
  const [, rule, rest = ''] = FORM.exec(comment) ?? [];
  if (rule === undefined) return undefined;
  if (rest.startsWith(':')) return { rule, reason: rest.slice(1).trim() };
  return isRuleName(rule) ? { rule, reason: '' } : undefined;
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
