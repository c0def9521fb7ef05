/** The fixes of the findings at a place, and all safe ones at once. */
import type { Analysis } from '../../analysis/analysis.ts';
import type { FileEdit, Finding, Fix } from '../../analysis/finding.ts';
import { overlaps, type TextRange } from '../../base/text-range.ts';

export interface OfferedFix {
  readonly finding: Finding;
  readonly fix: Fix;
}

export function fixesAt(analysis: Analysis, range: TextRange): readonly OfferedFix[] {
  return analysis.findings
    .filter((finding) => overlaps(finding.range, range))
    .flatMap((finding) => finding.fixes.map((fix) => ({ finding, fix })));
}

/** The edits of chosen fixes that do not get into each other's way: of two that overlap, the first counts. */
export function editsTogether(fixes: readonly Fix[]): readonly FileEdit[] {
  const taken: FileEdit[] = [];
  for (const { edits } of fixes) {
    const fresh = edits.filter((edit) => !taken.some((other) => sameEdit(edit, other)));
    const blocked = fresh.some((edit) => taken.some((other) => collides(edit, other)));
    if (!blocked) taken.push(...fresh);
  }
  return taken;
}

/** The edits of every safe fix of a file. */
export function safeEdits({ findings }: Analysis): readonly FileEdit[] {
  return editsTogether(findings.flatMap(({ fixes }) => fixes.find(({ kind }) => kind === 'safe') ?? []));
}

function sameEdit(one: FileEdit, other: FileEdit): boolean {
  return (
    one.file === other.file &&
    one.range.start === other.range.start &&
    one.range.end === other.range.end &&
    one.newText === other.newText
  );
}

/** Two insertions at one place do not collide; anything else that touches does. */
function collides(one: FileEdit, other: FileEdit): boolean {
  if (one.file !== other.file) return false;
  const bothInsert = one.range.start === one.range.end && other.range.start === other.range.end;
  return !bothInsert && overlaps(one.range, other.range);
}
