/**
 * Makes everything that is generated: the quantities in the schemas, the schema checks and types of the model, the list of rules, the page of every
 * rule, and the pages of the file formats.
 *
 *   node server/tools/generate.mjs           names the files that are stale, exit status 1 if there are any
 *   node server/tools/generate.mjs --write   writes them
 */
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { generateFormatPages } from './generate-format-pages.mjs';
import { generateModel } from './generate-model.mjs';
import { generateQuantities } from './generate-quantities.mjs';
import { generateRegistry, generateRulePages } from './generate-rules.mjs';

const project = new URL('../../', import.meta.url);

/** In this order: the model is made from the schemas, which name the quantities; the pages are made by the rules themselves, so that the list of rules has to be written before. */
const GENERATORS = [generateQuantities, generateModel, generateRegistry, generateRulePages, generateFormatPages];

/** @returns {Promise<string[]>} the paths of generated files that do not hold what they should */
export async function staleFiles() {
  const stale = [];
  for (const [path, content] of await generateAll()) if ((await present(path)) !== content) stale.push(path);
  return stale;
}

async function generateAll() {
  const made = await Promise.all(GENERATORS.map((generate) => generate()));
  return new Map(made.flatMap((files) => [...files]));
}

async function writeAll() {
  for (const generate of GENERATORS) {
    for (const [path, content] of await generate()) {
      if ((await present(path)) === content) continue;
      await mkdir(dirname(fileURLToPath(new URL(path, project))), { recursive: true });
      await writeFile(new URL(path, project), content);
    }
  }
}

function present(path) {
  return readFile(new URL(path, project), 'utf8').catch(() => undefined);
}

async function main(write) {
  if (write) return writeAll();
  const stale = await staleFiles();
  for (const path of stale) console.error(`${path} is stale: run \`npm run generate\``);
  if (stale.length > 0) process.exitCode = 1;
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  await main(process.argv.includes('--write'));
}
