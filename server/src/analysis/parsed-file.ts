/** One version of one file: its text, tree and model. Immutable. */
import { type LineIndex, lineIndexOf } from '../base/line-index.ts';
import type { TextRange } from '../base/text-range.ts';
import { type FileModel, joinParts, readPart } from '../model/read-file.ts';
import { ENTRY_KEYS, type FileKind } from '../model/schema.ts';
import { foreignAnchorsOf, TreeWalker } from '../syntax/cursor.ts';
import type { Origin, Part, SyntaxTree } from '../syntax/nodes.ts';
import { parseFile } from '../syntax/parse-file.ts';

export interface ParsedFile {
  /** Its URI. */
  readonly file: string;
  readonly kind: FileKind;
  readonly text: string;
  readonly tree: SyntaxTree;
  readonly walker: TreeWalker;
  readonly model: FileModel;
  readonly lines: LineIndex;
  /** The place of an origin in the file as it stands. */
  rangeOf(origin: Origin): TextRange;
}

export function parseSource(file: string, kind: FileKind, text: string): ParsedFile {
  const tree = parseFile(text, ENTRY_KEYS[kind]);
  const foreign = foreignAnchorsOf(tree);
  const parts = tree.parts.map(({ part }) => readPart(kind, part, foreign));
  const model = joinParts(kind, tree, parts, foreign);
  const offsets = new Map<Part, number>(tree.parts.map(({ part, offset }) => [part, offset]));
  let lines: LineIndex | undefined;
  return {
    file,
    kind,
    text,
    tree,
    walker: new TreeWalker(foreign),
    model,
    get lines() {
      lines ??= lineIndexOf(text);
      return lines;
    },
    rangeOf({ part, start, end }) {
      const offset = offsets.get(part) ?? 0;
      return { start: offset + start, end: offset + end };
    },
  };
}
