import type { PartEdit } from '../syntax/edit.ts';
import type { Origin } from '../syntax/nodes.ts';

/** The rules under which the model itself reports what it could not read. */
export type ModelProblemRule =
  | 'yaml-syntax'
  | 'schema'
  | 'value-unreadable'
  | 'difference-in-degrees'
  | 'range-reversed';

export interface SuggestedEdit {
  readonly title: string;
  readonly kind: 'safe' | 'choice';
  readonly edit: PartEdit;
}

export interface ModelProblem {
  readonly rule: ModelProblemRule;
  readonly origin: Origin;
  /** One sentence without its stop. */
  readonly sentence: string;
  readonly suggestions: readonly SuggestedEdit[];
  readonly related?: { readonly sentence: string; readonly origin: Origin };
  /** The entry or key the problem belongs to: a tag, the id of a space, a top-level key. */
  readonly subject: string;
}

export interface ProblemContext {
  readonly subject: string;
  readonly problems: ModelProblem[];
}

/** A list of edits less those that a place does not allow. */
export function suggestion(
  title: string,
  kind: 'safe' | 'choice',
  edit: PartEdit | undefined,
): readonly SuggestedEdit[] {
  return edit === undefined ? [] : [{ title, kind, edit }];
}
