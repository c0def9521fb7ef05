/** The schema of a place in a file. */
import { branchOf, childSchema, type FileKind, resolveSchema, SCHEMAS, type SchemaNode } from '../../model/schema.ts';
import type { Location } from '../../syntax/locate.ts';
import type { SyntaxNode } from '../../syntax/nodes.ts';
import { scalarIn } from './scalar-in.ts';

export interface PlaceSchema {
  readonly schema: SchemaNode;
  /** The schema of the map around it, which says whether the key is a free name. */
  readonly parent: SchemaNode | undefined;
}

/** Follows a path of keys and list indices from the top level. */
export function schemaAt(kind: FileKind, path: readonly string[], kindOf?: string): PlaceSchema | undefined {
  let schema: SchemaNode = resolveSchema(kind, SCHEMAS[kind]);
  let parent: SchemaNode | undefined;
  for (const name of path) {
    parent = branchOf(kind, schema, kindOf);
    const child =
      schema.items === undefined ? childSchema(kind, parent, name, kindOf) : resolveSchema(kind, schema.items);
    if (child === undefined) return undefined;
    schema = child;
  }
  return { schema, parent };
}

/** The value of `kind` beside a place, by which maps such as signals are told apart. */
export function kindBeside(location: Location): string | undefined {
  return textBeside(location, 'kind');
}

/** What a key says in the innermost map around a place that has it. */
export function textBeside({ part, path }: Location, key: string): string | undefined {
  let node: SyntaxNode | undefined = part.root;
  let found: string | undefined;
  const below = path.slice(Math.max(0, part.path.length - 1));
  for (const name of [...below, '']) {
    if (node?.kind === 'list') node = node.items[Number(name)];
    else if (node?.kind === 'map') {
      found = scalarIn(node, key)?.text ?? found;
      node = node.pairs.find((pair) => pair.key.text === name)?.value;
    } else node = undefined;
  }
  return found;
}
