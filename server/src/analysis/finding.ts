/** Findings as plain data, with places as offsets into their files: what every outlet shows. */
import type { TextRange } from '../base/text-range.ts';
import type { Fact } from '../evaluate/facts/fact.ts';
import type { FixKind, Severity } from '../rules/rule.ts';

export interface FileEdit {
  readonly file: string;
  readonly range: TextRange;
  readonly newText: string;
}

export interface Fix {
  readonly title: string;
  readonly kind: FixKind;
  readonly edits: readonly FileEdit[];
}

export interface RelatedPlace {
  readonly message: string;
  readonly file: string;
  readonly range: TextRange;
}

export interface Finding {
  readonly rule: string;
  readonly severity: Severity;
  readonly message: string;
  /** The tag of the point, else the id of the space, model, kit or file. */
  readonly subject: string;
  readonly range: TextRange;
  readonly facts: readonly Fact[];
  readonly related: readonly RelatedPlace[];
  readonly fixes: readonly Fix[];
}

/** By place, then rule; what one rule says of one place stays in the order in which it was said. */
export function compareFindings(one: Finding, other: Finding): number {
  return one.range.start - other.range.start || one.range.end - other.range.end || compareText(one.rule, other.rule);
}

function compareText(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
