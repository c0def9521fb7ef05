/** The values of a point and of its space that can be tried: those that stand in the file, as they are written there. */
import type { Analysis } from '../analysis/analysis.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { dimensionAt } from '../features/support/place-dimension.ts';
import { visitPart } from '../features/support/schema-walk.ts';
import type { SchemaNode } from '../model/schema.ts';
import type { Dimension } from '../quantity/dimension.ts';
import { readQuantity, readRange } from '../quantity/read-quantity.ts';
import type { Cursor } from '../syntax/cursor.ts';
import { locate } from '../syntax/locate.ts';

export interface Field {
  /** Unique in the file: `points/K2-MT-101/humidity-probe/heater/rise`. */
  readonly name: string;
  /** What the field belongs to: `humidity-probe`, `space kiln-2`. */
  readonly group: string;
  /** `heater › rise` */
  readonly label: string;
  /** As the file has it. */
  readonly text: string;
  readonly cursor: Cursor;
  readonly value: FieldValue;
}

export type FieldValue =
  | {
      readonly kind: 'quantity';
      readonly form: 'value' | 'range';
      readonly dimension: Dimension;
      readonly example: string;
    }
  | { readonly kind: 'choice'; readonly words: readonly string[] };

/** What is said behind an alias is left alone: it would change elsewhere too. */
export function fieldsOf(analysis: Analysis, { tag, space }: PointEvaluation): readonly Field[] {
  const { parsed } = analysis;
  const fields: Field[] = [];
  for (const { part, offset } of parsed.tree.parts) {
    let keyed = '';
    visitPart(parsed.kind, part, {
      key: ({ text }, mapPath) => {
        keyed = [...mapPath, text].join('/');
      },
      node(node, schema, path) {
        // The items of a list have the path of the list, and stand behind no key.
        const name = path.join('/');
        const isKeyed = name === keyed;
        keyed = '';
        const [map, entry] = path;
        const isOurs = (map === 'points' && entry === tag) || (map === 'spaces' && entry === space?.id);
        if (!isKeyed || !isOurs || schema === undefined || node.kind !== 'scalar' || node.text === '') return;
        const value = valueAt(analysis, schema, offset + node.start, path.at(-1));
        if (value !== undefined)
          fields.push({ name, ...titlesOf(path), text: node.text, cursor: { part, node }, value });
      },
    });
  }
  return fields.toSorted((one, other) => rankOf(one) - rankOf(other));
}

/** Where a text cannot stand in a field, why, in one sentence. */
export function problemOf({ value }: Field, text: string): string | undefined {
  if (value.kind === 'choice') return value.words.includes(text) ? undefined : `“${text}” is none of the words here.`;
  const read = value.form === 'range' ? readRange : readQuantity;
  const outcome = read(text, value.dimension, value.example);
  return outcome.ok ? undefined : `${outcome.problem.sentence}.`;
}

function valueAt(analysis: Analysis, schema: SchemaNode, at: number, key: string | undefined): FieldValue | undefined {
  const { parsed } = analysis;
  if (schema.quantity !== undefined) {
    const location = locate(parsed.tree, at);
    const dimension = location === undefined ? undefined : dimensionAt(parsed.kind, location);
    const example = String(schema.examples?.[0] ?? '');
    return dimension === undefined ? undefined : { kind: 'quantity', form: schema.quantity.form, dimension, example };
  }
  const words = schema.reference === undefined ? (schema.enum ?? []) : modelsOf(analysis, schema.reference);
  // Another kind needs other keys beside it, another quantity other units.
  return words.length === 0 || key === 'kind' || key === 'quantity'
    ? undefined
    : { kind: 'choice', words: words.map(String) };
}

function modelsOf({ content }: Analysis, reference: NonNullable<SchemaNode['reference']>): readonly string[] {
  if (content.kind !== 'site') return [];
  const { humidityProbes, temperatureProbes, transmitters } = content.site.catalogue;
  switch (reference) {
    case 'humidity-probe-model':
      return [...humidityProbes.keys()];
    case 'temperature-probe-model':
      return [...temperatureProbes.keys()];
    case 'transmitter-model':
      return [...transmitters.keys()];
    default:
      return [];
  }
}

function titlesOf([map, entry = '', ...keys]: readonly string[]): Pick<Field, 'group' | 'label'> {
  if (map === 'spaces') return { group: `space ${entry}`, label: keys.join(' › ') };
  const [group = '', ...rest] = keys;
  return { group, label: rest.length === 0 ? group : rest.join(' › ') };
}

/** The point's own values first, in the order of the file. */
function rankOf({ group }: Field): number {
  return group.startsWith('space ') ? 1 : 0;
}
