/** How the value of a key is written: the text that completion puts behind the colon, with places to type in. */
import { branchOf, type FileKind, resolveSchema, type SchemaNode } from '../../../model/schema.ts';
import { DIMENSIONS, type Dimension, unitOf } from '../../../quantity/dimension.ts';
import type { QuantityName } from '../../../quantity/quantities.ts';
import { isQuantityName } from '../../../quantity/quantities.ts';
import { takeApart } from '../../../quantity/value-form.ts';
import { dimensionOf } from '../../support/place-dimension.ts';
import type { SnippetPiece } from './completion-item.ts';

export interface Shape {
  readonly pieces: readonly SnippetPiece[];
  /** True where the first thing to type is one to choose. */
  readonly asksNext: boolean;
}

const CHOSEN: Shape = { pieces: [' ', { hole: '' }], asksNext: true };
const TYPED: Shape = { pieces: [' ', { hole: '' }], asksNext: false };

/** What a colon is followed by. @param inFlow inside braces or brackets, where nothing goes over to a new line */
export function valueShape(
  kind: FileKind,
  schema: SchemaNode,
  quantity: QuantityName | undefined,
  inFlow: boolean,
): Shape {
  if (schema.quantity !== undefined) return quantityShape(schema, quantity);
  if (schema.enum?.every(isString) === true) {
    const isLong = schema.enum.some((word) => isQuantityName(String(word)));
    return isLong ? CHOSEN : { pieces: [' ', { choices: schema.enum.map(String) }], asksNext: false };
  }
  if (schema.reference !== undefined || schema['air-temperature-source'] === true) return CHOSEN;
  if (schema.type === 'boolean') return { pieces: [' ', { choices: ['true', 'false'] }], asksNext: false };
  if (schema.const !== undefined) return { pieces: [` ${schema.const}`], asksNext: false };
  if (schema.type === 'array') return arrayShape(kind, schema);
  if (isMap(schema)) return mapShape(kind, schema, quantity, inFlow);
  const example = schema.examples?.[0];
  const isNumber = schema.type === 'integer' || schema.type === 'number';
  if (example !== undefined && (isNumber || schema.format === 'date')) {
    return { pieces: [' ', { hole: String(example) }], asksNext: false };
  }
  return TYPED;
}

export function isMap(schema: SchemaNode): boolean {
  return schema.type === 'object' || schema.properties !== undefined || schema.discriminator !== undefined;
}

/** A value as it usually is at a place: `0 .. 100 %RH`. */
export function exampleOf(schema: SchemaNode, dimension: Dimension): string {
  const own = (schema.examples ?? []).map(String).find((example) => {
    const form = takeApart(example);
    return form !== undefined && unitOf(dimension, form.symbol) !== undefined;
  });
  return own ?? (schema.quantity?.form === 'range' ? exampleRange(dimension) : DIMENSIONS[dimension].example);
}

/** The numbers of a value are typed over, its unit stays. */
export function valuePieces(example: string): readonly SnippetPiece[] {
  const form = takeApart(example);
  if (form === undefined) return [{ hole: example }];
  const high: readonly SnippetPiece[] = form.highText === undefined ? [] : [' .. ', { hole: form.highText }];
  return [{ hole: form.lowText }, ...high, ` ${form.rest}`];
}

function quantityShape(schema: SchemaNode, quantity: QuantityName | undefined): Shape {
  const dimension = dimensionOf(schema, quantity, '');
  if (dimension === undefined) return TYPED;
  return { pieces: [' ', ...valuePieces(exampleOf(schema, dimension))], asksNext: false };
}

function exampleRange(dimension: Dimension): string {
  const form = takeApart(DIMENSIONS[dimension].example);
  return form === undefined ? '' : `0 .. ${form.lowText} ${form.rest}`;
}

function arrayShape(kind: FileKind, schema: SchemaNode): Shape {
  const items = schema.items === undefined ? {} : resolveSchema(kind, schema.items);
  if (isMap(items)) return { pieces: ['\n  - ', { hole: '' }], asksNext: true };
  return { pieces: [' [', { hole: '' }, ']'], asksNext: true };
}

/** The required keys of a map, one a line or in braces. */
function mapShape(kind: FileKind, schema: SchemaNode, quantity: QuantityName | undefined, inFlow: boolean): Shape {
  const branch = branchOf(kind, schema, undefined);
  const required = (branch.required ?? []).map((key) => {
    const child = branch.properties?.[key];
    const shape = child === undefined ? CHOSEN : valueShape(kind, resolveSchema(kind, child), quantity, true);
    return { key, shape };
  });
  const asksNext = required[0]?.shape.asksNext ?? true;
  const pairs = required.map(({ key, shape }): readonly SnippetPiece[] => [`${key}:`, ...shape.pieces]);
  const empty: readonly SnippetPiece[] = [{ hole: '' }];
  const content = pairs.length === 0 ? [empty] : pairs;
  if (inFlow) return { pieces: [' {', ...joined(content, ', '), '}'], asksNext };
  return { pieces: ['\n  ', ...joined(content, '\n  ')], asksNext };
}

function joined(pairs: readonly (readonly SnippetPiece[])[], between: string): readonly SnippetPiece[] {
  return pairs.flatMap((pair, index) => (index === 0 ? pair : [between, ...pair]));
}

function isString(word: string | number): word is string {
  return typeof word === 'string';
}
