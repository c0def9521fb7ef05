/** The schema of a place in a file. */
import { branchOf, childSchema, type FileKind, resolveSchema, SCHEMAS, type SchemaNode } from '../model/schema.ts';
import type { Location } from '../syntax/locate.ts';

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
  const map = location.part.root;
  let node = map;
  const names = location.path.slice(Math.max(0, location.part.path.length - 1));
  for (const name of names) {
    const kind = node?.pairs.find((pair) => pair.key.text === 'kind')?.value;
    if (kind?.kind === 'scalar') return kind.text;
    const next = node?.pairs.find((pair) => pair.key.text === name)?.value;
    node = next?.kind === 'map' ? next : undefined;
  }
  const kind = node?.pairs.find((pair) => pair.key.text === 'kind')?.value;
  return kind?.kind === 'scalar' ? kind.text : undefined;
}
