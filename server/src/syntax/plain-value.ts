/** Nodes to plain values for the schema check. An alias bomb is measured, not unfolded. */
import type { Cursor, TreeWalker } from './cursor.ts';
import type { SyntaxNode } from './nodes.ts';

export type PlainValue =
  | string
  | number
  | boolean
  | null
  | readonly PlainValue[]
  | { readonly [key: string]: PlainValue };

/** A site file of 50,000 lines has about 150,000 nodes in all; one part never has that many. */
const MOST_NODES = 200_000;

/** The formats nest seven deep. */
const DEEPEST = 100;

interface Extent {
  /** How many nodes there are once aliases are unfolded. */
  readonly nodes: number;
  readonly levels: number;
}

const ONE_NODE: Extent = { nodes: 1, levels: 1 };
const ENDLESS: Extent = { nodes: Number.POSITIVE_INFINITY, levels: Number.POSITIVE_INFINITY };

/** The plain value, or undefined where its aliases unfold to more than any file needs. */
export function plainValueOf(cursor: Cursor, walker: TreeWalker): PlainValue | undefined {
  const { nodes, levels } = extentOf(cursor, walker, new Map(), 1);
  return nodes > MOST_NODES || levels > DEEPEST ? undefined : unfold(cursor, walker);
}

/** Goes through each node once, however many aliases stand for it. */
function extentOf(cursor: Cursor, walker: TreeWalker, known: Map<SyntaxNode, Extent>, level: number): Extent {
  if (cursor.node.kind === 'scalar') return ONE_NODE;
  const before = known.get(cursor.node);
  if (before !== undefined) return before;
  if (level > DEEPEST) return ENDLESS;
  let { nodes, levels } = ONE_NODE;
  for (const inner of valuesIn(cursor, walker)) {
    const extent = extentOf(inner, walker, known, level + 1);
    nodes += extent.nodes;
    levels = Math.max(levels, extent.levels + 1);
  }
  known.set(cursor.node, { nodes, levels });
  return { nodes, levels };
}

function valuesIn(cursor: Cursor, walker: TreeWalker): readonly Cursor[] {
  return cursor.node.kind === 'list' ? walker.items(cursor) : walker.pairs(cursor).map(({ value }) => value);
}

function unfold(cursor: Cursor, walker: TreeWalker): PlainValue {
  const { node } = cursor;
  if (node.kind === 'scalar') return node.value;
  if (node.kind === 'list') return walker.items(cursor).map((item) => unfold(item, walker));
  const map: Record<string, PlainValue> = Object.create(null);
  for (const { key, value } of walker.pairs(cursor)) map[key.text] = unfold(value, walker);
  return map;
}
