/** Nodes to plain values for the schema check, within a budget: an alias bomb is found, not unfolded. */
import type { Cursor, TreeWalker } from './cursor.ts';

export type PlainValue =
  | string
  | number
  | boolean
  | null
  | readonly PlainValue[]
  | { readonly [key: string]: PlainValue };

/** A site file of 50,000 lines has about 150,000 nodes in all; one part never has that many. */
export const MOST_NODES = 200_000;

/** The formats nest seven deep. */
const DEEPEST = 100;

export interface Budget {
  left: number;
}

export function newBudget(): Budget {
  return { left: MOST_NODES };
}

/** The plain value, or undefined where the budget ran out. */
export function plainValueOf(cursor: Cursor, walker: TreeWalker, budget: Budget, depth = 0): PlainValue | undefined {
  budget.left -= 1;
  if (budget.left < 0 || depth > DEEPEST) return undefined;
  const { node } = cursor;
  if (node.kind === 'scalar') return node.value;
  if (node.kind === 'list') {
    const items: PlainValue[] = [];
    for (const item of walker.items(cursor)) {
      const value = plainValueOf(item, walker, budget, depth + 1);
      if (value === undefined) return undefined;
      items.push(value);
    }
    return items;
  }
  const map: Record<string, PlainValue> = Object.create(null);
  for (const pair of walker.pairs(cursor)) {
    const value = plainValueOf(pair.value, walker, budget, depth + 1);
    if (value === undefined) return undefined;
    map[pair.key.text] = value;
  }
  return map;
}
