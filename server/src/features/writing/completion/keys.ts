/** The keys that a map may still have, the needed ones first, each with the right form of its value behind it. */
import { resolveSchema, type SchemaNode } from '../../../model/schema.ts';
import { inlineCode } from '../../support/markdown.ts';
import { dimensionOf } from '../../support/place-dimension.ts';
import { type CompletionItem, withDetail } from './completion-item.ts';
import { type CompletionContext, kindsOf } from './context.ts';
import { exampleOf, valueShape } from './value-shape.ts';

export function keyItems(context: CompletionContext): readonly CompletionItem[] {
  const { kind, schema, place } = context;
  const tag = schema.discriminator?.propertyName;
  if (tag !== undefined) return place.siblings.has(tag) ? [] : [keyItem(context, tag, kindsOf(kind, schema))];
  const excluded = alternativesTaken(schema, place.siblings);
  const open = Object.entries(schema.properties ?? {}).filter(
    ([key]) => !place.siblings.has(key) && !excluded.has(key),
  );
  const isNeeded = ([key]: (typeof open)[number]): boolean => schema.required?.includes(key) === true;
  const ordered = [...open.filter(isNeeded), ...open.filter((entry) => !isNeeded(entry))];
  return ordered.map(([key, child]) => keyItem(context, key, resolveSchema(kind, child)));
}

/** Keys of which a map takes one: once it is there, the others are not offered. */
function alternativesTaken(schema: SchemaNode, siblings: ReadonlyMap<string, string>): ReadonlySet<string> {
  const groups = (schema.oneOf ?? []).map(({ required }) => required ?? []);
  const isTaken = groups.some((keys) => keys.some((key) => siblings.has(key)));
  return new Set(isTaken ? groups.flat() : []);
}

function keyItem({ kind, place, quantity }: CompletionContext, key: string, schema: SchemaNode): CompletionItem {
  const shape = valueShape(kind, schema, quantity, place.inFlow);
  const item = {
    label: key,
    kind: 'key',
    ...withDetail(exampleText(schema, quantity)),
    documentation: keyDocumentation(schema),
  } as const;
  if (place.hasColon) return { ...item, insert: [key] };
  const insert = [`${key}:`, ...shape.pieces];
  return shape.asksNext ? { ...item, insert, asksNext: true } : { ...item, insert };
}

function exampleText(schema: SchemaNode, quantity: CompletionContext['quantity']): string | undefined {
  const dimension = dimensionOf(schema, quantity, '');
  const example = dimension === undefined ? schema.examples?.[0] : exampleOf(schema, dimension);
  return example === undefined ? undefined : `e.g. ${example}`;
}

function keyDocumentation(schema: SchemaNode): string {
  const builtIn = schema.default === undefined ? '' : `\n\nBuilt in: ${inlineCode(String(schema.default))}`;
  return `${schema.description ?? schema.title ?? ''}${builtIn}`;
}
