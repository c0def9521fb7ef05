/** What the values that are tried make of the file: the edits, and the analysis that would follow from them. */
import type { Analysis } from '../analysis/analysis.ts';
import type { FileEdit } from '../analysis/finding.ts';
import type { Workspace } from '../analysis/workspace.ts';
import { applyEdits } from '../base/text-range.ts';
import { replaceScalar } from '../syntax/edit.ts';
import { yamlWord } from '../syntax/yaml-word.ts';
import { type Field, problemOf } from './what-if-fields.ts';

/** A field with what was put into it. */
export interface TriedField {
  readonly field: Field;
  readonly tried: string;
  /** Why that cannot stand there; undefined where it can. */
  readonly problem: string | undefined;
}

export interface Trial {
  readonly fields: readonly TriedField[];
  /** Of the fields whose text is another than the file's and can stand there. */
  readonly edits: readonly FileEdit[];
}

/** @param inputs by the names of the fields; what no field has is left out */
export function trialOf(analysis: Analysis, fields: readonly Field[], inputs: ReadonlyMap<string, string>): Trial {
  const tried = fields.map((field): TriedField => {
    const text = (inputs.get(field.name) ?? field.text).trim();
    return { field, tried: text, problem: text === field.text ? undefined : problemOf(field, text) };
  });
  return { fields: tried, edits: tried.flatMap((each) => editOf(analysis, each) ?? []) };
}

function editOf({ parsed }: Analysis, { field, tried, problem }: TriedField): FileEdit | undefined {
  if (tried === field.text || problem !== undefined) return undefined;
  const edit = replaceScalar(field.cursor, field.value.kind === 'choice' ? yamlWord(tried) : tried);
  return edit && { file: parsed.file, range: parsed.rangeOf(edit), newText: edit.newText };
}

/** The analysis as it is where nothing is tried. */
export function analysisAfter(workspace: Workspace, analysis: Analysis, { edits }: Trial): Analysis {
  if (edits.length === 0) return analysis;
  return workspace.analysisIf(analysis.file, applyEdits(analysis.parsed.text, edits)) ?? analysis;
}
