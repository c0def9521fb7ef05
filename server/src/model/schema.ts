/**
 * The JSON Schemas as data: the one truth about keys. The validators are compiled from them; lowering, completion,
 * hovers and `explain` read them here.
 */
import kitSchema from '../../../schemas/dewkit.schema.json';
import siteSchema from '../../../schemas/dewsite.schema.json';
import visitSchema from '../../../schemas/dewvisit.schema.json';
import { remembered } from '../base/remembered.ts';
import type { Dimension } from '../quantity/dimension.ts';

export const FILE_KINDS = ['site', 'kit', 'visit'] as const;

export type FileKind = (typeof FILE_KINDS)[number];

export type ReferenceKind =
  | 'space'
  | 'humidity-probe-model'
  | 'temperature-probe-model'
  | 'transmitter-model'
  | 'receiver-model'
  | 'kit-file'
  | 'point'
  | 'salt'
  | 'rule'
  | 'log-file'
  | 'signal'
  | 'handover-step';

/** A dimension, or how to find it: from the quantity named beside the value, or from the unit written. */
export type AnnotatedDimension = Dimension | 'of-quantity' | 'difference-of-quantity' | 'current-or-voltage';

export interface QuantityAnnotation {
  readonly dimension: AnnotatedDimension;
  readonly form: 'value' | 'range';
  /** A value that is never below zero, though others of its dimension may be. */
  readonly unsigned?: true;
  /** Where the quantity is named: a sibling key, or `<key>` for the key of the map itself. */
  readonly of?: string;
}

/** The part of JSON Schema that the formats use, with the annotations of our own. */
export interface SchemaNode {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly title?: string;
  readonly description?: string;
  readonly enum?: readonly (string | number)[];
  readonly enumDescriptions?: readonly string[];
  readonly const?: string | number;
  readonly pattern?: string;
  readonly format?: 'date';
  readonly examples?: readonly (string | number | boolean)[];
  readonly default?: string | number | boolean;
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly required?: readonly string[];
  readonly propertyNames?: SchemaNode;
  readonly additionalProperties?: boolean | SchemaNode;
  readonly items?: SchemaNode;
  readonly oneOf?: readonly SchemaNode[];
  readonly discriminator?: { readonly propertyName: string };
  readonly definitions?: Readonly<Record<string, SchemaNode>>;
  readonly entries?: true;
  readonly quantity?: QuantityAnnotation;
  readonly reference?: ReferenceKind;
  readonly 'air-temperature-source'?: true;
}

export const SCHEMAS: Readonly<Record<FileKind, SchemaNode>> = {
  site: siteSchema as SchemaNode,
  kit: kitSchema as SchemaNode,
  visit: visitSchema as SchemaNode,
};

const ENDINGS: readonly (readonly [string, FileKind])[] = [
  ['.dewsite.yaml', 'site'],
  ['.dewkit.yaml', 'kit'],
  ['.dewvisit.yaml', 'visit'],
];

/** The kind of a file by its name, or undefined where it is none of ours. */
export function fileKindOf(path: string): FileKind | undefined {
  return ENDINGS.find(([ending]) => path.endsWith(ending))?.[1];
}

/** The top-level keys whose entries are parsed and checked one by one. */
function entryKeysOf(kind: FileKind): ReadonlySet<string> {
  const properties = Object.entries(SCHEMAS[kind].properties ?? {});
  return new Set(properties.filter(([, schema]) => schema.entries === true).map(([key]) => key));
}

export const ENTRY_KEYS: Readonly<Record<FileKind, ReadonlySet<string>>> = {
  site: entryKeysOf('site'),
  kit: entryKeysOf('kit'),
  visit: entryKeysOf('visit'),
};

/** Follows `$ref` inside one file's schema. The referring node's own description wins. */
export function resolveSchema(kind: FileKind, schema: SchemaNode): SchemaNode {
  return schema.$ref === undefined ? schema : RESOLVED[kind](schema);
}

const RESOLVED: Readonly<Record<FileKind, (schema: SchemaNode) => SchemaNode>> = {
  site: remembered((schema: SchemaNode) => followReference('site', schema)),
  kit: remembered((schema: SchemaNode) => followReference('kit', schema)),
  visit: remembered((schema: SchemaNode) => followReference('visit', schema)),
};

function followReference(kind: FileKind, { $ref = '', ...own }: SchemaNode): SchemaNode {
  const target = SCHEMAS[kind].definitions?.[$ref.replace('#/definitions/', '')] ?? {};
  return { ...resolveSchema(kind, target), ...own };
}

/** The schema of one key of a map. @param kindOf for maps told apart by `kind`: its value */
export function childSchema(kind: FileKind, map: SchemaNode, key: string, kindOf?: string): SchemaNode | undefined {
  const branch = branchOf(kind, map, kindOf);
  const known = branch.properties?.[key];
  if (known !== undefined) return resolveSchema(kind, known);
  const free = branch.additionalProperties;
  return typeof free === 'object' ? resolveSchema(kind, free) : undefined;
}

/** The branch of a `oneOf` with a discriminator that a value of it selects; other maps are returned as they are. */
export function branchOf(kind: FileKind, map: SchemaNode, value: string | undefined): SchemaNode {
  const name = map.discriminator?.propertyName;
  if (name === undefined || map.oneOf === undefined) return map;
  const branches = map.oneOf.map((branch) => resolveSchema(kind, branch));
  const chosen = branches.find((branch) => {
    const tag = branch.properties?.[name];
    return tag?.const === value || (value !== undefined && tag?.enum?.includes(value));
  });
  return chosen ?? map;
}
