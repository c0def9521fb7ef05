/** Files made from the schemas alone: right in shape, without sense, and now and then wrong. */
import { type FileKind, resolveSchema, SCHEMAS, type SchemaNode } from '../../server/src/model/schema.ts';
import { DIMENSIONS, type Dimension } from '../../server/src/quantity/dimension.ts';
import type { Random } from './random.ts';

const NAMES = [
  'kiln-1',
  'prover',
  'K1-MT-101',
  'hp-heated',
  'AO1',
  'relative-humidity',
  'dew-point',
  'air-temperature',
];
const NUMBERS = ['0', '1', '-5', '12.5', '60', '98', '250', '1000', '1e6', '-300', '0.001'];
const DEEPEST = 9;

export function generatedFile(kind: FileKind, random: Random): string {
  return JSON.stringify(valueFor(kind, resolveSchema(kind, SCHEMAS[kind]), random, 0), undefined, 1);
}

function valueFor(kind: FileKind, schema: SchemaNode, random: Random, depth: number): unknown {
  if (random.chance(0.02)) return random.pick([null, true, -1, '', 'x', [], {}, [[]], 1e300]);
  if (schema.quantity !== undefined) return quantityText(schema.quantity.dimension, schema.quantity.form, random);
  if (schema.const !== undefined) return schema.const;
  if (schema.enum !== undefined) return random.pick(schema.enum);
  if (schema.oneOf !== undefined) return valueFor(kind, resolveSchema(kind, random.pick(schema.oneOf)), random, depth);
  if (schema.items !== undefined) {
    const items = resolveSchema(kind, schema.items);
    return Array.from({ length: random.below(4) }, () => valueFor(kind, items, random, depth + 1));
  }
  if (schema.properties !== undefined || typeof schema.additionalProperties === 'object') {
    return depth > DEEPEST ? {} : mapFor(kind, schema, random, depth);
  }
  return random.chance(0.7) && schema.examples !== undefined ? random.pick(schema.examples) : random.pick(NAMES);
}

function mapFor(kind: FileKind, schema: SchemaNode, random: Random, depth: number): Record<string, unknown> {
  const map: Record<string, unknown> = {};
  const required = new Set(schema.required);
  for (const [key, child] of Object.entries(schema.properties ?? {})) {
    const share = required.has(key) ? 0.98 : 0.5;
    if (random.chance(share)) map[key] = valueFor(kind, resolveSchema(kind, child), random, depth + 1);
  }
  const free = schema.additionalProperties;
  if (typeof free === 'object') {
    for (let left = random.below(4); left > 0; left--) {
      map[random.pick(NAMES)] = valueFor(kind, resolveSchema(kind, free), random, depth + 1);
    }
  }
  return map;
}

function quantityText(annotated: string, form: 'value' | 'range', random: Random): string {
  const dimension = annotated in DIMENSIONS ? (annotated as Dimension) : random.pick(Object.keys(DIMENSIONS));
  const { units } = DIMENSIONS[dimension as Dimension];
  const unit = random.pick(units).symbol;
  const number = random.pick(NUMBERS);
  return form === 'value' ? `${number} ${unit}` : `${number} .. ${random.pick(NUMBERS)} ${unit}`;
}
