/** Compiles the JSON Schemas to plain functions, so that neither the schemas nor ajv are needed to check a file. */
import Ajv from 'ajv';
import standaloneCode from 'ajv/dist/standalone/index.js';
import { camelCase, entryMaps, withoutAnnotations } from './generate-schema-walk.mjs';

/**
 * One check per file kind, in which the entries of the large maps are accepted as they are, and one per entry of such
 * a map: an edit in one point then needs the check of that point alone.
 *
 * @param {ReadonlyMap<string, object>} schemas by file kind: site, kit, visit
 * @returns {{ code: string, types: string }}
 */
export function generateValidators(schemas) {
  const ajv = new Ajv({
    strict: true,
    strictRequired: false, // the branches of an exactly-one-of group only list what they require
    allowUnionTypes: true,
    discriminator: true,
    allErrors: true,
    messages: false,
    inlineRefs: false, // one function per definition makes the smaller program
    formats: { date: true }, // read with better words where the model is made
    code: { source: true, esm: true, lines: false },
  });
  const checks = {};
  for (const [kind, schema] of schemas) {
    ajv.addSchema(withOpenEntries(withoutAnnotations(schema), entryMaps(schema)));
    checks[`${kind}Root`] = schema.$id;
    for (const [key, entry] of entryMaps(schema))
      checks[camelCase(`${kind}-${singular(key)}`)] = schema.$id + entry.$ref;
  }
  return { code: inLines(standaloneCode(ajv, checks)), types: declarations(Object.keys(checks)) };
}

function withOpenEntries(schema, entries) {
  const properties = { ...schema.properties };
  for (const [key] of entries) properties[key] = { ...properties[key], additionalProperties: true };
  return { ...schema, properties };
}

/** ajv writes everything in one line; a line per function lets a change be seen. */
function inLines(code) {
  const lines = code
    .replace('"use strict";', '')
    .replace(/(?<=[;}])(?=export const |const schema\d|function validate\d)/g, '\n');
  return `${lines}\n`;
}

function singular(key) {
  return key.replace(/s$/, '');
}

function declarations(names) {
  return `export interface SchemaError {
  readonly keyword: string;
  /** JSON pointer to the value. */
  readonly instancePath: string;
  readonly schemaPath: string;
  readonly params: Readonly<Record<string, unknown>>;
  /** The key that broke a rule for keys. */
  readonly propertyName?: string;
}

/** True where the value keeps the schema; otherwise \`errors\` holds what the last call found. */
export interface SchemaCheck {
  (value: unknown): boolean;
  readonly errors?: readonly SchemaError[] | null;
}

${names.map((name) => `export declare const ${name}: SchemaCheck;`).join('\n')}
`;
}
