/** Acceptances put into a file, changed and taken out. */
import type { Cursor } from '../../syntax/cursor.ts';
import type { PartEdit } from '../../syntax/edit.ts';
import { lineEnd, lineStart, newlineOf, nextLine } from '../../syntax/lines.ts';
import type { FixDraft, IdleAcceptance } from '../rule.ts';

/**
 * Adds `# accept RULE: REASON` alone on the line above a value, indented as the value's line is.
 * @returns undefined where a comment stands there already: it may accept something, and would lose its line
 */
export function acceptanceAbove({ part, node, via }: Cursor, rule: string, reason: string): PartEdit | undefined {
  const start = lineStart(part, node.start);
  const above = part.text.slice(lineStart(part, Math.max(0, start - 1)), start);
  if (via !== undefined || above.trimStart().startsWith('#')) return undefined;
  const indent = /^ */.exec(part.text.slice(start))?.[0] ?? '';
  return { part, start, end: start, newText: `${indent}# accept ${rule}: ${reason}${newlineOf(part)}` };
}

/** Takes an acceptance comment out, with its line where it stands alone. */
export function removeAcceptance({ origin, rule }: IdleAcceptance): FixDraft {
  const { part, start, end } = origin;
  const line = lineStart(part, start);
  const before = part.text.slice(line, start);
  const edit =
    before.trim() === ''
      ? { part, start: line, end: nextLine(part, lineEnd(part, end)), newText: '' }
      : { part, start: line + before.trimEnd().length, end, newText: '' };
  return { title: `Remove the acceptance of ${rule}`, kind: 'choice', edits: [edit] };
}

export function changeAcceptedRule({ origin, rule, text }: IdleAcceptance, to: string): FixDraft {
  const { part } = origin;
  const start = origin.start + text.indexOf(rule, text.indexOf('accept') + 'accept'.length);
  return { title: `Change to ${to}`, kind: 'choice', edits: [{ part, start, end: start + rule.length, newText: to }] };
}

/** Puts the colon before a reason that stands there without it; undefined where none stands there. */
export function addColon({ origin, rule, text }: IdleAcceptance): FixDraft | undefined {
  const head = /^(#\s*accept\s+[a-z0-9-]+)\s+[^:\s]/.exec(text)?.[1];
  if (head === undefined) return undefined;
  const start = origin.start + head.length;
  const edit = { part: origin.part, start, end: start, newText: ':' };
  return { title: `Accept ${rule} for this reason`, kind: 'safe', edits: [edit] };
}
