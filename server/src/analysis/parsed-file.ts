/** One version of one file: its text, tree and model. Immutable. */
import type { LineIndex } from '../base/line-index.ts';
import { remembered } from '../base/remembered.ts';
import type { TextRange } from '../base/text-range.ts';
import { type FileModel, joinParts, type ReadPart, readPart } from '../model/read-file.ts';
import { ENTRY_KEYS, type FileKind } from '../model/schema.ts';
import { type ForeignAnchors, foreignAnchorsOf, TreeWalker } from '../syntax/cursor.ts';
import type { Origin, Part, SyntaxNode, SyntaxTree } from '../syntax/nodes.ts';
import { linesOfTree, parseFile } from '../syntax/parse-file.ts';

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
  /** As `rangeOf`, also for what was read of this file before it was read anew; undefined where it is there no more. */
  rangeIfThere(origin: Origin): TextRange | undefined;
}

/** @param before an earlier version of the file, whose unchanged parts are kept */
export function parseSource(file: string, kind: FileKind, text: string, before?: ParsedFile): ParsedFile {
  const tree = parseFile(text, ENTRY_KEYS[kind], before?.tree);
  const foreign = foreignAnchorsOf(tree);
  const parts = tree.parts.map(({ part }) => readOnce(kind, part, foreign));
  const model = joinParts(kind, tree, parts, foreign);
  return {
    file,
    kind,
    text,
    tree,
    walker: new TreeWalker(foreign),
    model,
    lines: linesOfTree(tree),
    rangeOf({ part, start, end }) {
      const offset = offsetsOf(tree).get(part) ?? 0;
      return { start: offset + start, end: offset + end };
    },
    rangeIfThere({ part, start, end }) {
      const offset = offsetsOf(tree).get(part) ?? tree.parts.find((placed) => isSame(placed.part, part))?.offset;
      return offset === undefined ? undefined : { start: offset + start, end: offset + end };
    },
  };
}

function isSame(one: Part, other: Part): boolean {
  return one.text === other.text && one.path.join('/') === other.path.join('/');
}

const offsetsOf = remembered(
  (tree: SyntaxTree): ReadonlyMap<Part, number> => new Map(tree.parts.map(({ part, offset }) => [part, offset])),
);

interface Reading {
  readonly foreign: readonly (SyntaxNode | undefined)[];
  readonly read: ReadPart;
}

const NONE: readonly undefined[] = [];

const readingsOf = remembered((_part: Part): Reading[] => []);

/** A part that stands as it did, and whose foreign anchors do, reads as it did. */
function readOnce(kind: FileKind, part: Part, anchors: ForeignAnchors): ReadPart {
  const foreign = part.foreignAliases.length === 0 ? NONE : foreignNodes(part, anchors, new Set());
  const readings = readingsOf(part);
  const known = readings[0];
  if (known !== undefined && sameItems(known.foreign, foreign)) return known.read;
  const read = readPart(kind, part, anchors);
  readings[0] = { foreign, read };
  return read;
}

/** What the foreign aliases of a part stand for, and what those in turn need from other parts. */
function foreignNodes(part: Part, anchors: ForeignAnchors, seen: Set<Part>): readonly (SyntaxNode | undefined)[] {
  if (part.foreignAliases.length === 0 || seen.has(part)) return [];
  seen.add(part);
  return part.foreignAliases.flatMap(({ name }) => {
    const target = anchors.get(part)?.get(name);
    return target === undefined ? [undefined] : [target.node, ...foreignNodes(target.part, anchors, seen)];
  });
}

function sameItems(one: readonly unknown[], other: readonly unknown[]): boolean {
  return one.length === other.length && one.every((item, index) => item === other[index]);
}
