/**
 * Where a file gives names and where it uses them. A part is read once for as long as it stands, whatever moves it, so
 * that a question about one name costs no walk over the file.
 */
import type { ParsedFile } from '../analysis/parsed-file.ts';
import { remembered } from '../base/remembered.ts';
import { shiftRange, type TextRange, touches } from '../base/text-range.ts';
import { readAirTemperatureSource } from '../model/air-temperature-source.ts';
import {
  branchOf,
  childSchema,
  type FileKind,
  type ReferenceKind,
  resolveSchema,
  SCHEMAS,
  type SchemaNode,
} from '../model/schema.ts';
import type { MapNode, Part, PlacedPart, ScalarNode, SyntaxNode } from '../syntax/nodes.ts';

/** What a name stands for. A kit is named by the path of its file, everything else by its id or tag. */
export type NameKind =
  | 'site'
  | 'kit'
  | 'space'
  | 'point'
  | 'humidity-probe-model'
  | 'temperature-probe-model'
  | 'transmitter-model'
  | 'receiver-model'
  | 'log'
  | 'anchor';

export type NameRole = 'definition' | 'reference';

export interface Occurrence {
  readonly kind: NameKind;
  readonly role: NameRole;
  readonly name: string;
  /** The name itself, without quotes where it stands there as it is read. */
  readonly range: TextRange;
}

/** All names in a file, with their places in it, in the order of the text. */
export function occurrencesIn({ kind, tree }: ParsedFile): readonly Occurrence[] {
  return tree.parts.flatMap((placed) => placedOccurrences(kind, placed));
}

/** The name that a cursor touches. */
export function occurrenceAt({ kind, tree }: ParsedFile, offset: number): Occurrence | undefined {
  const placed = tree.parts.findLast((candidate) => candidate.offset <= offset);
  if (placed === undefined) return undefined;
  return placedOccurrences(kind, placed).find(({ range }) => touches(range, offset));
}

function placedOccurrences(kind: FileKind, { part, offset }: PlacedPart): readonly Occurrence[] {
  return OCCURRENCES[kind](part).map((found) => ({ ...found, range: shiftRange(found.range, offset) }));
}

const OCCURRENCES: Readonly<Record<FileKind, (part: Part) => readonly Occurrence[]>> = {
  site: remembered((part: Part) => readPart('site', part)),
  kit: remembered((part: Part) => readPart('kit', part)),
  visit: remembered((part: Part) => readPart('visit', part)),
};

/** The maps whose keys are the names of what they hold. */
const NAMED_ENTRIES: Readonly<Record<string, NameKind>> = {
  'site/spaces': 'space',
  'site/points': 'point',
  'kit/humidity-probes': 'humidity-probe-model',
  'kit/temperature-probes': 'temperature-probe-model',
  'kit/transmitters': 'transmitter-model',
  'kit/receivers': 'receiver-model',
};

const NAMED_VALUES: Readonly<Record<string, { readonly kind: NameKind; readonly role: NameRole }>> = {
  'site/site/id': { kind: 'site', role: 'definition' },
  'kit/kit/id': { kind: 'kit', role: 'definition' },
  'visit/visit/site': { kind: 'site', role: 'reference' },
};

const REFERENCES: Readonly<Partial<Record<ReferenceKind, NameKind>>> = {
  space: 'space',
  point: 'point',
  'humidity-probe-model': 'humidity-probe-model',
  'temperature-probe-model': 'temperature-probe-model',
  'transmitter-model': 'transmitter-model',
  'receiver-model': 'receiver-model',
  'kit-file': 'kit',
  'log-file': 'log',
};

interface Walk {
  readonly kind: FileKind;
  readonly found: Occurrence[];
}

function readPart(kind: FileKind, part: Part): readonly Occurrence[] {
  const walk: Walk = { kind, found: [] };
  const top = resolveSchema(kind, SCHEMAS[kind]);
  const [mapName] = part.path;
  if (part.root === undefined) return [];
  if (part.path.length === 2 && mapName !== undefined) {
    walkMap(walk, part.root, childSchema(kind, top, mapName), [mapName]);
  } else {
    walkMap(walk, part.root, top, []);
  }
  return walk.found.sort((one, other) => one.range.start - other.range.start);
}

function walkNode(walk: Walk, node: SyntaxNode, schema: SchemaNode | undefined, path: readonly string[]): void {
  if (node.kind === 'alias') {
    walk.found.push({ kind: 'anchor', role: 'reference', name: node.name, range: afterSign(node) });
    return;
  }
  if (node.anchor !== undefined) {
    walk.found.push({ kind: 'anchor', role: 'definition', name: node.anchor.name, range: afterSign(node.anchor) });
  }
  if (node.kind === 'map') walkMap(walk, node, schema, path);
  else if (node.kind === 'list') {
    const items = schema?.items === undefined ? undefined : resolveSchema(walk.kind, schema.items);
    for (const item of node.items) walkNode(walk, item, items, path);
  } else readScalar(walk, node, schema, path);
}

function walkMap(walk: Walk, map: MapNode, schema: SchemaNode | undefined, path: readonly string[]): void {
  const { kind } = walk;
  const named = NAMED_ENTRIES[[kind, ...path].join('/')];
  const kindOf = map.pairs.find(({ key }) => key.text === 'kind')?.value;
  const branch =
    schema === undefined ? undefined : branchOf(kind, schema, kindOf?.kind === 'scalar' ? kindOf.text : undefined);
  for (const { key, value } of map.pairs) {
    if (named !== undefined) add(walk, named, 'definition', key);
    const child = branch === undefined ? undefined : childSchema(kind, branch, key.text);
    walkNode(walk, value, child, [...path, key.text]);
  }
}

function readScalar(walk: Walk, node: ScalarNode, schema: SchemaNode | undefined, path: readonly string[]): void {
  if (node.text === '') return;
  const own = NAMED_VALUES[[walk.kind, ...path].join('/')];
  if (own !== undefined) add(walk, own.kind, own.role, node);
  const referred = schema?.reference === undefined ? undefined : REFERENCES[schema.reference];
  if (referred !== undefined) add(walk, referred, 'reference', node);
  if (schema?.['air-temperature-source'] === true && isTagOfPoint(node.text)) add(walk, 'point', 'reference', node);
}

function isTagOfPoint(text: string): boolean {
  const source = readAirTemperatureSource(text);
  return source.ok && source.value.value.kind === 'point';
}

function add({ found }: Walk, kind: NameKind, role: NameRole, { text, textStart, start, end }: ScalarNode): void {
  const range = textStart === undefined ? { start, end } : { start: textStart, end: textStart + text.length };
  found.push({ kind, role, name: text, range });
}

/** The name behind `&` or `*`. */
function afterSign({ start, end }: TextRange): TextRange {
  return { start: start + 1, end };
}
