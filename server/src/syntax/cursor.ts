/** Walking a tree across aliases and merge keys, with places that a reader understands. */
import type { AliasNode, MapNode, Origin, Part, ScalarNode, SyntaxNode, SyntaxTree } from './nodes.ts';

type ContentNode = Exclude<SyntaxNode, AliasNode>;

/** A node seen from somewhere. `via` is the alias through which it is seen: findings point there. */
export interface Cursor {
  readonly part: Part;
  readonly node: ContentNode;
  readonly via?: Origin;
}

export interface PairCursor {
  readonly key: ScalarNode;
  readonly keyOrigin: Origin;
  readonly value: Cursor;
}

interface AnchorTarget {
  readonly part: Part;
  readonly node: ContentNode;
}

/** For each part, what the aliases stand for whose anchors lie in earlier parts. */
export type ForeignAnchors = ReadonlyMap<Part, ReadonlyMap<string, AnchorTarget>>;

export function foreignAnchorsOf(tree: SyntaxTree): ForeignAnchors {
  const known = new Map<string, AnchorTarget>();
  const foreign = new Map<Part, ReadonlyMap<string, AnchorTarget>>();
  for (const { part } of tree.parts) {
    if (part.foreignAliases.length > 0) {
      const found = new Map<string, AnchorTarget>();
      for (const { name } of part.foreignAliases) {
        const target = known.get(name);
        if (target !== undefined) found.set(name, target);
      }
      foreign.set(part, found);
    }
    for (const [name, node] of part.anchors) known.set(name, { part, node });
  }
  return foreign;
}

/** As typed, without quotes; of all but a scalar none. */
export function textOf({ node }: { readonly node: SyntaxNode }): string {
  return node.kind === 'scalar' ? node.text : '';
}

export function originOf({ part, node, via }: Cursor): Origin {
  const own = { part, start: node.start, end: node.end };
  return via === undefined ? own : { ...via, definedAt: own };
}

export class TreeWalker {
  readonly foreign: ForeignAnchors;

  constructor(foreign: ForeignAnchors) {
    this.foreign = foreign;
  }

  /** The node itself, or what an alias stands for; undefined where its anchor is not there. */
  at(part: Part, node: SyntaxNode, via?: Origin): Cursor | undefined {
    if (node.kind !== 'alias') return via === undefined ? { part, node } : { part, node, via };
    const target = node.target === undefined ? this.foreign.get(part)?.get(node.name) : { part, node: node.target };
    if (target === undefined) return undefined;
    return { ...target, via: via ?? { part, start: node.start, end: node.end } };
  }

  /** The pairs of a map with what its merge keys bring in; the map's own keys win, then those merged first. */
  pairs(map: Cursor): readonly PairCursor[] {
    const found = new Map<string, PairCursor>();
    const seen = new Set<ContentNode>();
    const pending = [map];
    for (let next = pending.pop(); next !== undefined; next = pending.pop()) {
      // A map that was merged already adds nothing once more, however often aliases name it.
      if (next.node.kind !== 'map' || seen.has(next.node)) continue;
      seen.add(next.node);
      pending.push(...this.#takePairs(next, found).toReversed());
    }
    return [...found.values()];
  }

  items(list: Cursor): readonly Cursor[] {
    if (list.node.kind !== 'list') return [];
    return list.node.items.flatMap((item) => this.at(list.part, item, list.via) ?? []);
  }

  /** Adds the pairs whose names are new. @returns what the map merges, in the order given */
  #takePairs({ part, node, via }: Cursor, found: Map<string, PairCursor>): readonly Cursor[] {
    if (node.kind !== 'map') return [];
    const merged: Cursor[] = [];
    for (const { key, value } of node.pairs) {
      const cursor = this.at(part, value, via);
      if (cursor === undefined) continue;
      if (isMergeKey(key)) merged.push(...(cursor.node.kind === 'list' ? this.items(cursor) : [cursor]));
      else if (!found.has(key.text)) {
        const place = via === undefined ? { part, node: key } : { part, node: key, via };
        found.set(key.text, { key, keyOrigin: originOf(place), value: cursor });
      }
    }
    return merged;
  }
}

/** In quotes it is a key like any other. */
function isMergeKey({ text, start, textStart }: ScalarNode): boolean {
  return text === '<<' && textStart === start;
}

/** The map that holds one part's single pair, as a cursor. */
export function rootCursor(part: Part): (Cursor & { readonly node: MapNode }) | undefined {
  return part.root === undefined ? undefined : { part, node: part.root };
}
