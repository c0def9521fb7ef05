/** Makes the schema checks and the model's types from the JSON Schemas. */
import { readFile } from 'node:fs/promises';
import { generateModelTypes } from './generate-model-types.mjs';
import { generateValidators } from './generate-validators.mjs';

const project = new URL('../../', import.meta.url);
const heading =
  '// Generated from schemas/ by server/tools/generate-model.mjs. Edit the schemas, then run `npm run generate`.\n';

/** @returns {Promise<Map<string, string>>} what each generated file should hold, by its path from the project's root */
export async function generateModel() {
  const schemas = new Map();
  for (const kind of ['site', 'kit', 'visit']) {
    schemas.set(kind, JSON.parse(await readFile(new URL(`schemas/dew${kind}.schema.json`, project), 'utf8')));
  }
  const validators = generateValidators(schemas);
  return new Map([
    ['server/src/model/validators.generated.js', heading + validators.code],
    ['server/src/model/validators.generated.d.ts', heading + validators.types],
    ['server/src/model/model-types.generated.ts', heading + generateModelTypes(schemas)],
  ]);
}
