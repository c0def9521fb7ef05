/**
 * Makes the schema checks and the model's types from the JSON Schemas.
 *
 *   node server/tools/generate-model.mjs           names the files that are stale, exit status 1 if there are any
 *   node server/tools/generate-model.mjs --write   writes them
 */
import { readFile, writeFile } from 'node:fs/promises';
import { pathToFileURL } from 'node:url';
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

/** @returns {Promise<string[]>} the paths of generated files that do not hold what they should */
export async function staleFiles() {
  const stale = [];
  for (const [path, content] of await generateModel()) {
    const present = await readFile(new URL(path, project), 'utf8').catch(() => undefined);
    if (present !== content) stale.push(path);
  }
  return stale;
}

async function main(write) {
  if (write) {
    for (const [path, content] of await generateModel()) await writeFile(new URL(path, project), content);
    return;
  }
  const stale = await staleFiles();
  for (const path of stale) console.error(`${path} is stale: run \`npm run generate\``);
  if (stale.length > 0) process.exitCode = 1;
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  await main(process.argv.includes('--write'));
}
