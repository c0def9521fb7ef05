/** What a view beside the file is: HTML made from the analysis of the file, for the place that the cursor is at. */
import type { Analysis } from '../analysis/analysis.ts';
import type { FileEdit } from '../analysis/finding.ts';
import type { Workspace } from '../analysis/workspace.ts';
import type { MarkupElement } from '../base/markup.ts';
import type { XY } from '../pictures/svg.ts';

export interface ViewRequest {
  readonly analysis: Analysis;
  /** Where the cursor is in the file. */
  readonly offset: number;
  /** What the user has set in the view itself: the values of its controls, by their names. */
  readonly inputs: ReadonlyMap<string, string>;
  readonly workspace: Workspace;
}

export interface View {
  /** Of the tab: what the view is about, in a few words. */
  readonly title: string;
  readonly body: readonly MarkupElement[];
}

export interface ViewKind {
  show(request: ViewRequest): View;
  /** What a spot of the view's drawing stands for, in the drawing's own coordinates; for drawings that `reads`. */
  readAt?(request: ViewRequest, spot: XY): string | undefined;
  /** What is written to the file where the user asks for it. */
  edits?(request: ViewRequest): readonly FileEdit[];
}
