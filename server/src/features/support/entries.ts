/** Which named entries, such as points, a stretch of a file touches. */
import type { ParsedFile } from '../../analysis/parsed-file.ts';
import { overlaps, type TextRange } from '../../base/text-range.ts';
import { ENTRY_KEYS } from '../../model/schema.ts';

export interface EntryName {
  /** `spaces`, `points` … */
  readonly map: string;
  readonly name: string;
}

export function entriesIn({ kind, tree }: ParsedFile, within: TextRange): readonly EntryName[] {
  return tree.parts.flatMap(({ part, offset }) => {
    if (!overlaps({ start: offset, end: offset + part.text.length }, within)) return [];
    const [map, name] = part.path;
    if (map !== undefined && name !== undefined) return [{ map, name }];
    return (part.root?.pairs ?? []).flatMap(({ key, value }) => {
      const isEntryMap = ENTRY_KEYS[kind].has(key.text) && value.kind === 'map';
      return isEntryMap ? value.pairs.map((pair) => ({ map: key.text, name: pair.key.text })) : [];
    });
  });
}
