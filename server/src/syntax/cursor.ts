/** Walking a tree across aliases and merge keys, with places that a reader understands. */
import type { AliasNode, MapNode, Origin, Part, ScalarNode, SyntaxNode, SyntaxTree } from './nodes.ts';

/** A node seen from somewhere. `via` is the alias through which it is seen: findings point there. */
export interface Cursor {
  readonly part: Part;
  readonly node: Exclude<SyntaxNode, AliasNode>;
  readonly via?: Origin;
}

export interface PairCursor {
  readonly key: ScalarNode;
  readonly keyOrigin: Origin;
  readonly value: Cursor;
}

interface AnchorTarget {
  readonly part: Part;
  readonly node: SyntaxNode;
}

/** For each part, what the aliases stand for whose anchors lie in earlier parts. */
export type ForeignAnchors = ReadonlyMap<Part, ReadonlyMap<string, AnchorTarget>>;

const NONE: ReadonlyMap<string, AnchorTarget> = new Map();

export function foreignAnchorsOf(tree: SyntaxTree): ForeignAnchors {
  const known = new Map<string, AnchorTarget>();
  const foreign = new Map<Part, ReadonlyMap<string, AnchorTarget>>();
  for (const { part } of tree.parts) {
    if (part.foreignAliases.length > 0) {
      const found = new Map<string, AnchorTarget>();
      for (const name of part.foreignAliases) {
        const target = known.get(name);
        if (target !== undefined) found.set(name, target);
      }
      foreign.set(part, found);
    }
    for (const [name, node] of part.anchors) known.set(name, { part, node });
  }
  return foreign;
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
    let place = { part, node };
    let seenThrough = via;
    for (let steps = 0; place.node.kind === 'alias'; steps++) {
      const alias = place.node;
      const target = this.#target(place.part, alias.name);
      if (target === undefined || steps > 100) return undefined;
      seenThrough ??= { part: place.part, start: alias.start, end: alias.end };
      place = target;
    }
    const cursor = { part: place.part, node: place.node };
    return seenThrough === undefined ? cursor : { ...cursor, via: seenThrough };
  }

  /** The pairs of a map with what its merge keys bring in; the map's own keys win. */
  pairs(map: Cursor): readonly PairCursor[] {
    if (map.node.kind !== 'map') return [];
    const own: PairCursor[] = [];
    const merged: PairCursor[] = [];
    for (const { key, value } of map.node.pairs) {
      const cursor = this.at(map.part, value, map.via);
      if (cursor === undefined) continue;
      if (key.text === '<<') merged.push(...this.#mergedPairs(cursor));
      else own.push({ key, keyOrigin: originOf({ ...map, node: key }), value: cursor });
    }
    if (merged.length === 0) return own;
    const names = new Set(own.map((pair) => pair.key.text));
    for (const pair of merged) {
      if (names.has(pair.key.text)) continue;
      names.add(pair.key.text);
      own.push(pair);
    }
    return own;
  }

  items(list: Cursor): readonly Cursor[] {
    if (list.node.kind !== 'list') return [];
    return list.node.items.flatMap((item) => this.at(list.part, item, list.via) ?? []);
  }

  #mergedPairs(source: Cursor): readonly PairCursor[] {
    if (source.node.kind === 'list') return this.items(source).flatMap((item) => this.#mergedPairs(item));
    return this.pairs(source);
  }

  #target(part: Part, name: string): AnchorTarget | undefined {
    const foreign = this.foreign.get(part) ?? NONE;
    const node = part.anchors.get(name);
    return foreign.get(name) ?? (node === undefined ? undefined : { part, node });
  }
}

/** The map that holds one part's single pair, as a cursor. */
export function rootCursor(part: Part): (Cursor & { readonly node: MapNode }) | undefined {
  return part.root === undefined ? undefined : { part, node: part.root };
}
