/** Small workspaces for the tests of features: files by name, one of them with the cursor marked by `|`. */
import type { Analysis } from '../../server/src/analysis/analysis.ts';
import type { FileEdit } from '../../server/src/analysis/finding.ts';
import type { ParsedFile } from '../../server/src/analysis/parsed-file.ts';
import { Workspace } from '../../server/src/analysis/workspace.ts';
import { applyEdits } from '../../server/src/base/text-range.ts';

export interface Marked {
  readonly workspace: Workspace;
  readonly file: string;
  readonly text: string;
  readonly offset: number;
  readonly parsed: ParsedFile;
  readonly analysis: Analysis;
}

export function uriOf(name: string): string {
  return `file:///${name}`;
}

export function workspaceOf(files: Readonly<Record<string, string>>): Workspace {
  const workspace = new Workspace();
  for (const [name, text] of Object.entries(files)) workspace.set(uriOf(name), text);
  workspace.markWhole();
  return workspace;
}

/** @param marked a file's text with one `|` where the cursor is; the other files have none */
export function openAt(name: string, marked: string, others: Readonly<Record<string, string>> = {}): Marked {
  const offset = marked.indexOf('|');
  if (offset < 0) throw new RangeError('no | marks the cursor');
  const text = marked.slice(0, offset) + marked.slice(offset + 1);
  const workspace = workspaceOf({ ...others, [name]: text });
  const file = uriOf(name);
  const [parsed, analysis] = [workspace.parsed(file), workspace.analysis(file)];
  if (parsed === undefined || analysis === undefined) throw new RangeError(`${name} is no file of ours`);
  return { workspace, file, text, offset, parsed, analysis };
}

/** The files that edits change, as they are afterwards, by name. */
export function edited(workspace: Workspace, edits: readonly FileEdit[]): Readonly<Record<string, string>> {
  const files = new Set(edits.map(({ file }) => file));
  return Object.fromEntries(
    [...files].map((file) => {
      const own = edits.filter((edit) => edit.file === file);
      return [file.replace('file:///', ''), applyEdits(workspace.parsed(file)?.text ?? '', own)];
    }),
  );
}

/** A stretch of a file with its line number, counted from 1, as a person would point at it. */
export function shown(
  workspace: Workspace,
  file: string,
  range: { readonly start: number; readonly end: number },
): string {
  const parsed = workspace.parsed(file);
  const line = (parsed?.lines.positionAt(range.start).line ?? 0) + 1;
  return `${file.replace('file:///', '')}:${line} ${parsed?.text.slice(range.start, range.end)}`;
}
