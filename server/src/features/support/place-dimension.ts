/** The dimension that a value has at its place in a file. */
import type { FileKind, SchemaNode } from '../../model/schema.ts';
import { DIMENSIONS, type Dimension } from '../../quantity/dimension.ts';
import { isQuantityName, type QuantityName, quantityInfo } from '../../quantity/quantities.ts';
import { textOf } from '../../syntax/cursor.ts';
import type { Location } from '../../syntax/locate.ts';
import { kindBeside, schemaAt, textBeside } from './schema-path.ts';

export function dimensionAt(kind: FileKind, location: Location): Dimension | undefined {
  const schema = schemaAt(kind, location.path, kindBeside(location))?.schema;
  return schema && dimensionOf(schema, quantityAt(location.path, textBeside(location, 'quantity')), textOf(location));
}

/** The quantity that spans, limits and tolerances speak of: what `quantity` says beside them, or the key of the report. */
export function quantityAt(path: readonly string[], beside: string | undefined): QuantityName | undefined {
  return [beside ?? '', ...path.toReversed()].find(isQuantityName);
}

/** The dimension that a value of a schema has, or undefined where it depends on a quantity that is not known. */
export function dimensionOf(
  schema: SchemaNode,
  quantity: QuantityName | undefined,
  text: string,
): Dimension | undefined {
  const dimension = schema['air-temperature-source'] === true ? 'temperature' : schema.quantity?.dimension;
  switch (dimension) {
    case undefined:
      return undefined;
    case 'of-quantity':
      return quantity && quantityInfo(quantity).dimension;
    case 'difference-of-quantity':
      return quantity && quantityInfo(quantity).difference;
    case 'current-or-voltage':
      return text.trimEnd().endsWith('V') ? 'voltage' : 'current';
    default:
      return dimension in DIMENSIONS ? dimension : undefined;
  }
}
