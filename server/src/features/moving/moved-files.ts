/** What moving or renaming files changes in the files that name them by path. */
import { relativeName, resolveFile } from '../../analysis/file-location.ts';
import type { FileEdit } from '../../analysis/finding.ts';
import type { Workspace } from '../../analysis/workspace.ts';
import { yamlWord } from '../../syntax/yaml-word.ts';
import { occurrencesIn } from './occurrences.ts';

/** A file, or a folder with all that is in it, as URIs. */
export interface Move {
  readonly from: string;
  readonly to: string;
}

/** Edits in the files as they stand before the move: to the paths of kits and recordings that no longer fit. */
export function editsForMoves(workspace: Workspace, moves: readonly Move[]): readonly FileEdit[] {
  const files = [...workspace.files('site'), ...workspace.files('visit')];
  return files.flatMap((file) => {
    const parsed = workspace.parsed(file);
    if (parsed === undefined) return [];
    return occurrencesIn(parsed).flatMap(({ kind, role, name, range }) => {
      if (role !== 'reference' || (kind !== 'kit' && kind !== 'log')) return [];
      const [newFile, newTarget] = [moved(file, moves), moved(resolveFile(file, name), moves)];
      if (resolveFile(newFile, name) === newTarget) return [];
      const path = relativeName(newFile, newTarget);
      return [{ file, range, newText: isInQuotes(parsed.text, range.start) ? path : yamlWord(path) }];
    });
  });
}

function moved(file: string, moves: readonly Move[]): string {
  for (const { from, to } of moves) {
    if (file === from) return to;
    if (file.startsWith(`${from}/`)) return to + file.slice(from.length);
  }
  return file;
}

function isInQuotes(text: string, start: number): boolean {
  return /["']/.test(text.charAt(start - 1));
}
