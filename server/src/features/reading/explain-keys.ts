/** The keys of the file formats, each with the places where it stands, as the schemas tell them. */
import {
  type AnnotatedDimension,
  FILE_KINDS,
  type FileKind,
  resolveSchema,
  SCHEMAS,
  type SchemaNode,
} from '../../model/schema.ts';
import { DIMENSIONS } from '../../quantity/dimension.ts';

export interface KeyPlace {
  readonly key: string;
  /** The keys that lead to it, from the kind of the file, itself the last. The names that users give are left out. */
  readonly path: readonly string[];
  readonly required: boolean;
  readonly schema: SchemaNode;
}

export function keyNames(): readonly string[] {
  return [...new Set(allPlaces().map(({ key }) => key))].sort();
}

/** The keys of one kind of file, in the order of the schema, each once. */
export function keysOfFile(kind: FileKind): readonly KeyPlace[] {
  return allPlaces().filter(({ path }) => path[0] === kind);
}

/** The page of a key as Markdown, or undefined where no file has it. */
export function keyPage(name: string): string | undefined {
  const places = allPlaces().filter(({ key }) => key === name);
  if (places.length === 0) return undefined;
  const lines = places.map(({ path, required, schema }) => {
    const about = [required ? 'Required.' : '', schema.description ?? '', valueWords(schema)].filter(Boolean).join(' ');
    return [`- \`${path.join(' › ')}\`: ${about}`, ...choices(schema).map((choice) => `  - ${choice}`)].join('\n');
  });
  return `# ${name}\n\nA key:\n\n${lines.join('\n')}\n`;
}

/** What is written behind a key: its units, examples. */
export function valueWords({ quantity, format, examples }: SchemaNode): string {
  return [
    quantity === undefined ? '' : `Units: ${unitWords(quantity.dimension)}.`,
    format === undefined ? '' : 'A date, `YYYY-MM-DD`.',
    examples === undefined ? '' : `For example ${examples.map((example) => `\`${example}\``).join(', ')}.`,
  ]
    .filter(Boolean)
    .join(' ');
}

/** The words that a key can have, each with its meaning. */
export function choices({ enum: words = [], enumDescriptions = [] }: SchemaNode): readonly string[] {
  return words.map((word, index) => `\`${word}\`: ${enumDescriptions[index] ?? ''}`);
}

function unitWords(dimension: AnnotatedDimension): string {
  switch (dimension) {
    case 'of-quantity':
      return 'those of the quantity';
    case 'difference-of-quantity':
      return 'those of a difference of the quantity';
    case 'current-or-voltage':
      return `${unitWords('current')}, ${unitWords('voltage')}`;
    default:
      return DIMENSIONS[dimension].units.map(({ symbol }) => symbol).join(', ');
  }
}

let places: readonly KeyPlace[] | undefined;

function allPlaces(): readonly KeyPlace[] {
  places ??= FILE_KINDS.flatMap((kind) => uniquePlaces(placesBelow(kind, resolveSchema(kind, SCHEMAS[kind]), [kind])));
  return places;
}

/** A key that all branches of a choice have stands once, as the first of them tells it. */
function uniquePlaces(found: readonly KeyPlace[]): readonly KeyPlace[] {
  return [...new Map(found.toReversed().map((place) => [place.path.join(), place])).values()].toReversed();
}

function placesBelow(kind: FileKind, schema: SchemaNode, path: readonly string[]): readonly KeyPlace[] {
  const own = Object.entries(schema.properties ?? {}).flatMap(([key, child]): readonly KeyPlace[] => {
    const resolved = resolveSchema(kind, child);
    // Words and examples of the entries of a map or a list stand with its key, since they have no line of their own.
    const told = { ...entryOf(kind, resolved), ...resolved };
    const place = { key, path: [...path, key], required: schema.required?.includes(key) ?? false, schema: told };
    return [place, ...placesBelow(kind, resolved, place.path)];
  });
  const entry = entryOf(kind, schema);
  const branches = schema.discriminator === undefined ? [] : (schema.oneOf ?? []);
  const unnamed = [...(entry === undefined ? [] : [entry]), ...branches.map((branch) => resolveSchema(kind, branch))];
  return [...own, ...unnamed.flatMap((child) => placesBelow(kind, child, path))];
}

/** The schema of the entries of a map or a list. */
function entryOf(kind: FileKind, { items, additionalProperties }: SchemaNode): SchemaNode | undefined {
  const entry = items ?? (typeof additionalProperties === 'object' ? additionalProperties : undefined);
  return entry && resolveSchema(kind, entry);
}
