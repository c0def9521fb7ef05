/** Where in a file something stands, as the keys that lead there: what stays the same while the text moves. */
import type { TextRange } from '../../base/text-range.ts';
import type { Origin, PairNode, SyntaxNode, SyntaxTree } from '../../syntax/nodes.ts';

/** Where a place of the old version is in the new one, after its point or space was renamed. */
export type PlaceNow = (path: readonly string[]) => readonly string[];

/** Up to a merge key: what comes through it may stand anywhere in its map. */
export function pathOf(origin: Origin): readonly string[] {
  const path = origin.part.path.slice(0, -1);
  let node: SyntaxNode | undefined = origin.part.root;
  while (node !== undefined) {
    if (node.kind === 'list') {
      const index: number = node.items.findIndex((item) => covers(item, origin));
      const item: SyntaxNode | undefined = node.items[index];
      if (item !== undefined) path.push(item.kind === 'scalar' ? item.text : String(index + 1));
      node = item;
    } else if (node.kind === 'map') {
      const pair: PairNode | undefined = node.pairs.find(
        ({ key, value }) => covers(key, origin) || covers(value, origin),
      );
      if (pair === undefined || pair.key.text === '<<') return path;
      path.push(pair.key.text);
      node = covers(pair.key, origin) ? undefined : pair.value;
    } else return path;
  }
  return path;
}

export function pathIn(tree: SyntaxTree, { start, end }: TextRange): readonly string[] {
  const placed = tree.parts.findLast(({ offset }) => offset <= start);
  if (placed === undefined) return [];
  return pathOf({ part: placed.part, start: start - placed.offset, end: end - placed.offset });
}

/** True where one place is inside the other, or both are the same. */
export function isWithin(one: readonly string[], other: readonly string[]): boolean {
  const length = Math.min(one.length, other.length);
  return one.slice(0, length).join('\n') === other.slice(0, length).join('\n');
}

function covers(outer: TextRange, inner: TextRange): boolean {
  return outer.start <= inner.start && outer.end >= inner.end;
}
