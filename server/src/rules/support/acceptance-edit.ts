/** Acceptances put into a file. */
import type { Cursor } from '../../syntax/cursor.ts';
import type { PartEdit } from '../../syntax/edit.ts';
import { lineStart, newlineOf } from '../../syntax/lines.ts';

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
