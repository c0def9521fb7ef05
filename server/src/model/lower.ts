/**
 * A parsed part to model values, guided by the schema. Values with units are read here; what cannot be read is
 * reported and left out. Shapes that the schema forbids are left out silently: the schema check has spoken of them.
 */
import type { Outcome } from '../base/outcome.ts';
import type { Dimension } from '../quantity/dimension.ts';
import { isQuantityName, type QuantityName, quantityInfo } from '../quantity/quantities.ts';
import { notNegative, type ReadProblem, type ReadResult, readQuantity, readRange } from '../quantity/read-quantity.ts';
import { type Cursor, originOf, type PairCursor, type TreeWalker, textOf } from '../syntax/cursor.ts';
import { replaceScalar } from '../syntax/edit.ts';
import { readAirTemperatureSource } from './air-temperature-source.ts';
import { isDate, likelyDates } from './date.ts';
import { type Located, locatedPair } from './located.ts';
import { type ProblemContext, suggestion } from './problem.ts';
import {
  type AnnotatedDimension,
  branchOf,
  childSchema,
  type FileKind,
  resolveSchema,
  type SchemaNode,
} from './schema.ts';

export interface LowerContext extends ProblemContext {
  readonly kind: FileKind;
  readonly walker: TreeWalker;
}

/** The quantity that spans, limits and tolerances of a map speak of. */
type QuantityContext = QuantityName | undefined;

/** @returns the model value of a node, or undefined where nothing of it can be read */
export function lowerNode(
  cursor: Cursor,
  schema: SchemaNode,
  context: LowerContext,
  ownKey?: string,
  inherited?: QuantityContext,
): unknown {
  const resolved = resolveSchema(context.kind, schema);
  if (cursor.node.kind === 'map') return lowerMap(cursor, resolved, context, ownKey, inherited);
  if (cursor.node.kind === 'list') return lowerList(cursor, resolved, context, inherited);
  return lowerScalar(cursor, resolved, context, inherited);
}

function lowerMap(
  cursor: Cursor,
  schema: SchemaNode,
  context: LowerContext,
  ownKey: string | undefined,
  inherited: QuantityContext,
): unknown {
  const pairs = context.walker.pairs(cursor);
  const tag = schema.discriminator?.propertyName;
  const branch = branchOf(context.kind, schema, tag === undefined ? undefined : scalarText(pairs, tag));
  const quantity = quantityNamed(pairs, ownKey) ?? inherited;
  const object: Record<string, unknown> = {};
  const others = new Map<string, Located<unknown>>();
  for (const pair of pairs) {
    const key = pair.key.text;
    const child = childSchema(context.kind, branch, key);
    if (child === undefined) continue;
    const value = lowerNode(pair.value, child, context, key, quantity);
    if (value === undefined) continue;
    if (branch.properties?.[key] === undefined) others.set(key, locatedPair(pair, value));
    else object[camelCase(key)] = typeof child.const === 'string' ? value : locatedPair(pair, value);
  }
  if (typeof branch.additionalProperties !== 'object') return branch.properties === undefined ? undefined : object;
  return branch.properties === undefined ? others : { ...object, others };
}

function lowerList(cursor: Cursor, schema: SchemaNode, context: LowerContext, inherited: QuantityContext): unknown {
  const { items } = schema;
  if (items === undefined) return undefined;
  return context.walker.items(cursor).flatMap((item): Located<unknown>[] => {
    const value = lowerNode(item, items, context, undefined, inherited);
    return value === undefined ? [] : [{ value, origin: originOf(item), cursor: item }];
  });
}

function lowerScalar(cursor: Cursor, schema: SchemaNode, context: LowerContext, inherited: QuantityContext): unknown {
  const { node } = cursor;
  if (node.kind !== 'scalar' || node.value === null) return undefined;
  if (schema.quantity !== undefined) {
    if (typeof node.value === 'boolean') return undefined;
    const dimension = dimensionOf(schema.quantity.dimension, inherited, node.text);
    if (dimension === undefined) return undefined;
    const [example] = schema.examples ?? [];
    const { form, unsigned } = schema.quantity;
    if (form === 'range') return settle(readRange(node.text, dimension, example?.toString()), cursor, context);
    const read = readQuantity(node.text, dimension, example?.toString());
    return settle(unsigned ? notNegative(read, node.text) : read, cursor, context);
  }
  if (schema['air-temperature-source'] === true) return settle(readAirTemperatureSource(node.text), cursor, context);
  if (schema.format === 'date') return readDate(cursor, context);
  if (schema.const !== undefined) return node.value === schema.const ? node.value : undefined;
  if (schema.enum !== undefined) return schema.enum.includes(node.value as string) ? node.value : undefined;
  return hasType(schema, node.value) ? node.value : undefined;
}

function dimensionOf(dimension: AnnotatedDimension, quantity: QuantityContext, text: string): Dimension | undefined {
  if (dimension === 'current-or-voltage') return text.trimEnd().endsWith('V') ? 'voltage' : 'current';
  if (dimension !== 'of-quantity' && dimension !== 'difference-of-quantity') return dimension;
  if (quantity === undefined) return undefined;
  const info = quantityInfo(quantity);
  return dimension === 'of-quantity' ? info.dimension : info.difference;
}

/** Reports what is wrong with a value that was read, and returns it where it can be used. */
function settle<Value>(
  read: Outcome<ReadResult<Value>, ReadProblem>,
  cursor: Cursor,
  context: LowerContext,
): Value | undefined {
  const { subject, problems } = context;
  if (read.ok) {
    const { notice } = read.value;
    if (notice !== undefined) {
      const sentence = `This is a temperature difference: write it as ${notice.suggestion}, which nobody takes for a temperature`;
      const suggestions = suggestion(`Write ${notice.suggestion}`, 'safe', replaceScalar(cursor, notice.suggestion));
      const origin = originOf(cursor);
      problems.push({ rule: 'difference-in-degrees', origin, sentence, suggestions, subject });
    }
    return read.value.value;
  }
  const { kind, sentence, range, suggestions } = read.problem;
  const isPlain = kind === 'reversed' || (kind === 'mistyped' && suggestions.length === 1);
  problems.push({
    rule: kind === 'reversed' ? 'range-reversed' : 'value-unreadable',
    origin: partOfScalar(cursor, range.start, range.end),
    sentence,
    suggestions: suggestions.flatMap((text) =>
      suggestion(`Write ${text}`, isPlain ? 'safe' : 'choice', replaceScalar(cursor, text)),
    ),
    subject,
  });
  return undefined;
}

function readDate(cursor: Cursor, context: LowerContext): string | undefined {
  const text = textOf(cursor);
  if (isDate(text)) return text;
  context.problems.push({
    rule: 'value-unreadable',
    origin: originOf(cursor),
    sentence: `“${text}” is no date; dates are written YYYY-MM-DD`,
    suggestions: likelyDates(text).flatMap((date) =>
      suggestion(`Write ${date}`, 'choice', replaceScalar(cursor, date)),
    ),
    subject: context.subject,
  });
  return undefined;
}

/** The place of a stretch of a scalar's text, or of the whole scalar where it is not as typed. */
function partOfScalar(cursor: Cursor, start: number, end: number) {
  const { node } = cursor;
  const origin = originOf(cursor);
  if (cursor.via !== undefined || node.kind !== 'scalar' || node.textStart === undefined || end <= start) return origin;
  return { ...origin, start: node.textStart + start, end: node.textStart + end };
}

function quantityNamed(pairs: readonly PairCursor[], ownKey: string | undefined): QuantityContext {
  const named = scalarText(pairs, 'quantity');
  if (named !== undefined && isQuantityName(named)) return named;
  return ownKey !== undefined && isQuantityName(ownKey) ? ownKey : undefined;
}

function scalarText(pairs: readonly PairCursor[], key: string): string | undefined {
  const node = pairs.find((pair) => pair.key.text === key)?.value.node;
  return node?.kind === 'scalar' ? node.text : undefined;
}

function hasType(schema: SchemaNode, value: string | number | boolean): boolean {
  const types = schema.type === undefined ? [] : [schema.type].flat();
  if (types.length === 0) return true;
  if (typeof value === 'number')
    return types.includes('number') || (types.includes('integer') && Number.isInteger(value));
  return types.includes(typeof value);
}

/** `humidity-probe` → `humidityProbe` */
export function camelCase(key: string): string {
  return key.replace(/-([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
}
