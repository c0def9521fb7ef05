/** From the use of a name to where it is given, and to everything that uses it. */
import { resolveFile } from '../../analysis/file-location.ts';
import type { ParsedFile } from '../../analysis/parsed-file.ts';
import type { Workspace } from '../../analysis/workspace.ts';
import type { TextRange } from '../../base/text-range.ts';
import { type NamePlace, placesOf, thingAt } from './names.ts';
import { occurrencesIn } from './occurrences.ts';

export interface Definition {
  /** What the cursor is on. */
  readonly from: TextRange;
  readonly file: string;
  readonly range: TextRange;
}

export function definitionAt(workspace: Workspace, parsed: ParsedFile, offset: number): Definition | undefined {
  const thing = thingAt(workspace, parsed, offset);
  if (thing?.home === undefined) return undefined;
  const from = thing.occurrence.range;
  const given = placesOf(workspace, thing).find(({ role }) => role === 'definition');
  if (given !== undefined) return { from, file: given.file, range: given.range };
  return thing.occurrence.kind === 'kit' ? { from, file: thing.home, range: { start: 0, end: 0 } } : undefined;
}

export function referencesAt(
  workspace: Workspace,
  parsed: ParsedFile,
  offset: number,
  withDefinition: boolean,
): readonly NamePlace[] {
  const thing = thingAt(workspace, parsed, offset);
  if (thing === undefined) return [];
  return placesOf(workspace, thing).filter(({ role }) => withDefinition || role === 'reference');
}

/** The places of the name under the cursor in its own file. */
export function highlightsAt(workspace: Workspace, parsed: ParsedFile, offset: number): readonly NamePlace[] {
  const thing = thingAt(workspace, parsed, offset);
  return thing === undefined ? [] : placesOf(workspace, thing).filter(({ file }) => file === parsed.file);
}

export interface FileLink {
  readonly range: TextRange;
  readonly target: string;
  readonly tooltip: string;
}

/** The kits and the recording that a file names, as links. */
export function fileLinks(parsed: ParsedFile): readonly FileLink[] {
  return occurrencesIn(parsed).flatMap(({ kind, role, name, range }) => {
    if (role !== 'reference' || (kind !== 'kit' && kind !== 'log')) return [];
    const tooltip = kind === 'kit' ? 'Open the kit file' : 'Open the recording';
    return [{ range, target: resolveFile(parsed.file, name), tooltip }];
  });
}
