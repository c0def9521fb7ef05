/** The schemas, the complete example of each file, and a check made by ajv from the schemas as they are written. */
import { readFileSync } from 'node:fs';
import Ajv, { type ValidateFunction } from 'ajv';
import { parse } from 'yaml';
import { OWN_ANNOTATIONS, type Schema } from '../../server/tools/generate-schema-walk.mjs';

export const KINDS = ['site', 'kit', 'visit'] as const;
export type Kind = (typeof KINDS)[number];

export function schemaOf(kind: Kind): Schema {
  return JSON.parse(readFileSync(new URL(`../../schemas/dew${kind}.schema.json`, import.meta.url), 'utf8'));
}

export function completeExample(kind: Kind): Record<string, unknown> {
  return parse(readFileSync(new URL(`complete.dew${kind}.yaml`, import.meta.url), 'utf8'), { merge: true });
}

const ajv = new Ajv({
  strict: true,
  strictRequired: false, // the branches of an exactly-one-of group only list what they require
  allowUnionTypes: true,
  discriminator: true,
  allErrors: true,
  keywords: [...OWN_ANNOTATIONS],
  formats: { date: true },
});

/** Refuses a schema with an unknown keyword or one that can have no effect. */
export function strictCheck(kind: Kind): ValidateFunction {
  const schema = schemaOf(kind);
  return ajv.getSchema(schema.$id ?? '') ?? ajv.compile(schema);
}
