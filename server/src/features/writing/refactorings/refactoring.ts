/** A change that keeps what the file means, or says in its title what it changes. */
import type { FileEdit } from '../../../analysis/finding.ts';
import type { TextRange } from '../../../base/text-range.ts';

export interface Refactoring {
  readonly title: string;
  readonly kind: 'rewrite' | 'extract';
  readonly edits: readonly FileEdit[];
}

/** Replaces one stretch of a file. */
export function replacing(
  file: string,
  range: TextRange,
  newText: string,
  title: string,
  kind: Refactoring['kind'] = 'rewrite',
): Refactoring {
  return { title, kind, edits: [{ file, range, newText }] };
}
