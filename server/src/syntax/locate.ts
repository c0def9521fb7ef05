/** What stands at a place of a file: the keys that lead there, and the value. */
import { type TextRange, touches } from '../base/text-range.ts';
import type { Part, ScalarNode, SyntaxNode, SyntaxTree } from './nodes.ts';

export interface Step {
  readonly name: string;
  readonly key: ScalarNode;
  readonly value: SyntaxNode;
}

export interface Location {
  readonly part: Part;
  /** Where the part starts in the file. */
  readonly partOffset: number;
  /** From the top level down: `points`, `K2-MT-101`, `humidity-probe`, `model`. */
  readonly path: readonly string[];
  /** The innermost pair; undefined between entries. */
  readonly step: Step | undefined;
  readonly on: 'key' | 'value';
  /** The key or the innermost value, as offsets into the part. */
  readonly range: TextRange;
  /** The innermost value, aliases as they are. */
  readonly node: SyntaxNode;
}

/** @param offset into the file */
export function locate(tree: SyntaxTree, offset: number): Location | undefined {
  const placed = tree.parts.findLast((candidate) => candidate.offset <= offset);
  const root = placed?.part.root;
  if (placed === undefined || root === undefined) return undefined;
  const { part } = placed;
  const path = part.path.slice(0, -1);
  return descend(part, placed.offset, offset - placed.offset, root, path, undefined);
}

function descend(
  part: Part,
  partOffset: number,
  at: number,
  node: SyntaxNode,
  path: readonly string[],
  step: Step | undefined,
): Location | undefined {
  if (node.kind === 'map') {
    for (const pair of node.pairs) {
      const own = { name: pair.key.text, key: pair.key, value: pair.value };
      if (touches(pair.key, at)) {
        const range = { start: pair.key.start, end: pair.key.end };
        return { part, partOffset, path: [...path, own.name], step: own, on: 'key', range, node: pair.value };
      }
      if (touches(pair.value, at)) return descend(part, partOffset, at, pair.value, [...path, own.name], own);
    }
    return step === undefined ? undefined : found(part, partOffset, node, path, step);
  }
  if (node.kind === 'list') {
    const index = node.items.findIndex((item) => touches(item, at));
    const item = node.items[index];
    if (item !== undefined) return descend(part, partOffset, at, item, [...path, String(index)], step);
  }
  return found(part, partOffset, node, path, step);
}

function found(
  part: Part,
  partOffset: number,
  node: SyntaxNode,
  path: readonly string[],
  step: Step | undefined,
): Location {
  return { part, partOffset, path, step, on: 'value', range: { start: node.start, end: node.end }, node };
}
