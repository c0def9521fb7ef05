/** Accepting a finding: the comment that says so, at the line of the finding, with a reason still to be written. */
import type { Analysis } from '../../analysis/analysis.ts';
import type { FileEdit, Finding } from '../../analysis/finding.ts';
import { overlaps, type TextRange } from '../../base/text-range.ts';

export interface OfferedAcceptance {
  readonly finding: Finding;
  readonly title: string;
  readonly edit: FileEdit;
  /** The reason to be typed over, in the text after the edit. */
  readonly reason: TextRange;
}

const PLACEHOLDER = 'say why this stands';

/** What cannot be accepted: a text that does not parse, and the acceptances themselves. */
const NOT_TO_ACCEPT = new Set(['yaml-syntax', 'acceptance-unused', 'acceptance-without-reason']);

export function acceptancesAt({ file, findings, parsed }: Analysis, range: TextRange): readonly OfferedAcceptance[] {
  const offered: OfferedAcceptance[] = [];
  for (const finding of findings) {
    const { rule } = finding;
    const isOffered = offered.some((other) => other.finding.rule === rule);
    if (!overlaps(finding.range, range) || NOT_TO_ACCEPT.has(rule) || isOffered) continue;
    const place = placeOfComment(parsed.text, finding.range.start);
    if (place === undefined) continue;
    const comment = `# accept ${rule}: `;
    const newText = `${place.before}${comment}${PLACEHOLDER}${place.after}`;
    const start = place.at + place.before.length + comment.length;
    offered.push({
      finding,
      title: `Accept ${rule} here, with a reason`,
      edit: { file, range: { start: place.at, end: place.at }, newText },
      reason: { start, end: start + PLACEHOLDER.length },
    });
  }
  return offered;
}

interface CommentPlace {
  readonly at: number;
  readonly before: string;
  readonly after: string;
}

/** Alone on the line above; where an acceptance stands there already, behind the line, if no comment is there. */
function placeOfComment(text: string, offset: number): CommentPlace | undefined {
  const lineStart = text.lastIndexOf('\n', offset - 1) + 1;
  const newline = text.indexOf('\n', lineStart);
  const line = text.slice(lineStart, newline < 0 ? text.length : newline).replace(/\r$/, '');
  const above = text.slice(text.lastIndexOf('\n', lineStart - 2) + 1, lineStart);
  if (!/^\s*#\s*accept\s/.test(above)) {
    const indent = /^[ ]*/.exec(line)?.[0] ?? '';
    return { at: lineStart, before: indent, after: text.includes('\r\n') ? '\r\n' : '\n' };
  }
  return line.includes('#') ? undefined : { at: lineStart + line.length, before: ' ', after: '' };
}
