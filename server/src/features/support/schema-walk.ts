/** Walks one part with the schema of every node beside it; aliases are shown as they stand. */
import { branchOf, childSchema, type FileKind, resolveSchema, SCHEMAS, type SchemaNode } from '../../model/schema.ts';
import type { MapNode, Part, ScalarNode, SyntaxNode } from '../../syntax/nodes.ts';
import { scalarIn } from './scalar-in.ts';

export interface PartVisitor {
  /** @param mapPath from the top level to the map that has the key */
  readonly key: (key: ScalarNode, mapPath: readonly string[]) => void;
  /** @param schema undefined where the schema does not know the place */
  readonly node: (node: SyntaxNode, schema: SchemaNode | undefined, path: readonly string[]) => void;
}

export function visitPart(kind: FileKind, part: Part, visitor: PartVisitor): void {
  const top = resolveSchema(kind, SCHEMAS[kind]);
  const [mapName] = part.path;
  const isEntry = part.path.length === 2 && mapName !== undefined;
  const schema = isEntry ? childSchema(kind, top, mapName) : top;
  if (part.root !== undefined) visitMap(kind, part.root, schema, isEntry ? [mapName] : [], visitor);
}

function visitNode(
  kind: FileKind,
  node: SyntaxNode,
  schema: SchemaNode | undefined,
  path: readonly string[],
  visitor: PartVisitor,
): void {
  visitor.node(node, schema, path);
  if (node.kind === 'map') visitMap(kind, node, schema, path, visitor);
  if (node.kind !== 'list') return;
  const items = schema?.items === undefined ? undefined : resolveSchema(kind, schema.items);
  for (const item of node.items) visitNode(kind, item, items, path, visitor);
}

function visitMap(
  kind: FileKind,
  map: MapNode,
  schema: SchemaNode | undefined,
  path: readonly string[],
  visitor: PartVisitor,
): void {
  const branch = schema && branchOf(kind, schema, scalarIn(map, 'kind')?.text);
  for (const { key, value } of map.pairs) {
    visitor.key(key, path);
    visitNode(kind, value, branch && childSchema(kind, branch, key.text), [...path, key.text], visitor);
  }
}

/** Where a scalar's text stands, without its quotes where every character stands as it is read. */
export function textRangeOf({ text, textStart, start, end }: ScalarNode): { start: number; end: number } {
  return textStart === undefined ? { start, end } : { start: textStart, end: textStart + text.length };
}
