import { describe, expect, it } from 'vitest';
import { MATERIALS } from '../../server/src/physics/heat/materials.ts';
import { DIMENSIONS } from '../../server/src/quantity/dimension.ts';
import { QUANTITY_NAMES } from '../../server/src/quantity/quantities.ts';
import { definitionName, type Schema, walkSchemas } from '../../server/tools/generate-schema-walk.mjs';
import { completeExample, KINDS, schemaOf, strictCheck } from './schema-files.ts';

/** Dimensions that are known only beside the quantity, or from the unit. */
const RESOLVED_LATER = ['of-quantity', 'difference-of-quantity', 'current-or-voltage'];

describe.each(KINDS)('the schema of the %s file', (kind) => {
  const schema = schemaOf(kind);

  it('is valid and has no keyword that ajv in strict mode does not know', () => {
    expect(strictCheck(kind).schema).toEqual(schema);
  });

  it('accepts the complete example', () => {
    const check = strictCheck(kind);
    check(completeExample(kind));
    expect(check.errors).toBeNull();
  });

  it('has no key that the complete example leaves out', () => {
    const used = new Set<Schema>();
    markUsed(completeExample(kind), schema, schema, used);
    const unused = schemaKeys(schema).filter(({ property }) => !used.has(property));
    expect(unused.map(({ path }) => path)).toEqual([]);
  });

  it('describes every key, every definition and every value of a list of words', () => {
    const silent = schemaKeys(schema).filter(({ property }) => !resolve(property, schema).description?.endsWith('.'));
    const nameless = Object.entries(schema.definitions ?? {}).filter(
      ([, { title, description }]) => !title || !description,
    );
    const miscounted: Schema[] = [];
    walkSchemas(schema, (inner) => {
      if (inner.enum?.length !== inner.enumDescriptions?.length) miscounted.push(inner);
    });
    expect([silent.map(({ path }) => path), nameless, miscounted]).toEqual([[], [], []]);
  });

  it('names each built-in value in the description too', () => {
    const unsaid = schemaKeys(schema).filter(
      ({ property }) =>
        property.default !== undefined && !property.description?.includes(`Built in: ${property.default}.`),
    );
    expect(unsaid.map(({ path }) => path)).toEqual([]);
  });

  it('uses only dimensions that values are read in', () => {
    const known = [...Object.keys(DIMENSIONS), ...RESOLVED_LATER];
    const used: string[] = [];
    walkSchemas(schema, ({ quantity }) => used.push(...(quantity === undefined ? [] : [quantity.dimension])));
    expect(used.filter((dimension) => !known.includes(dimension))).toEqual([]);
  });

  it('lists the quantities that the program knows', () => {
    const listed = schema.definitions?.['quantity-name']?.enum;
    expect(listed).toEqual(QUANTITY_NAMES);
  });
});

it('lists the materials whose conductivity is known', () => {
  const { material, 'insulation-material': insulation } = schemaOf('site').definitions ?? {};
  const listed = [...(material?.enum ?? []), ...(insulation?.enum ?? [])];
  expect(listed.toSorted()).toEqual(Object.keys(MATERIALS).toSorted());
});

it('definitions of one name are the same in every schema', () => {
  const first = new Map<string, Schema>();
  for (const kind of KINDS) {
    for (const [name, definition] of Object.entries(schemaOf(kind).definitions ?? {})) {
      expect(definition, name).toEqual(first.get(name) ?? definition);
      first.set(name, definition);
    }
  }
});

interface Key {
  readonly path: string;
  readonly property: Schema;
}

function schemaKeys(schema: Schema): readonly Key[] {
  const owners: [string, Schema][] = [['', schema], ...Object.entries(schema.definitions ?? {})];
  return owners.flatMap(([owner, { properties = {} }]) =>
    Object.entries(properties).map(([key, property]) => ({ path: `${owner}/${key}`, property })),
  );
}

/** The schema with what it refers to; its own keywords win. */
function resolve(schema: Schema, root: Schema): Schema {
  return { ...root.definitions?.[definitionName(schema) ?? ''], ...schema };
}

/** Collects the schema of every key that the value has. */
function markUsed(value: unknown, schema: Schema, root: Schema, used: Set<Schema>): void {
  const resolved = resolve(schema, root);
  if (Array.isArray(value)) {
    for (const item of value) markUsed(item, resolved.items ?? {}, root, used);
  } else if (typeof value === 'object' && value !== null) {
    const branches = [resolved, ...(resolved.oneOf ?? []).map((branch) => resolve(branch, root))];
    const branch = branches.find(({ properties }) => properties?.kind?.const === ('kind' in value && value.kind));
    const { properties, additionalProperties } = branch ?? resolved;
    for (const [key, inner] of Object.entries(value)) {
      const property = properties?.[key] ?? additionalProperties;
      if (typeof property !== 'object') continue;
      used.add(property);
      markUsed(inner, property, root, used);
    }
  }
}
