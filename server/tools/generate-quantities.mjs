/** Writes the names of the quantities, with what each is, into the schemas: from there they reach every editor. */
import { readFile } from 'node:fs/promises';
import { fromSources } from './from-sources.mjs';

const project = new URL('../../', import.meta.url);
const DEFINITION = /("quantity-name": \{[^{}]*?"enum": )\[[^\]]*\](,\s*"enumDescriptions": )\[[^\]]*\]/;
const INDENT = ' '.repeat(6);

/** @returns {Promise<Map<string, string>>} what each schema should hold, by its path from the project's root */
export async function generateQuantities() {
  const { QUANTITY_NAMES, descriptionOf } = await fromSources(
    "export { QUANTITY_NAMES, descriptionOf } from './server/src/quantity/quantities.ts';",
  );
  const [names, descriptions] = [QUANTITY_NAMES, QUANTITY_NAMES.map(descriptionOf)].map(listed);
  const schemas = ['site', 'kit', 'visit'].map(async (kind) => {
    const path = `schemas/dew${kind}.schema.json`;
    const text = await readFile(new URL(path, project), 'utf8');
    if (!DEFINITION.test(text))
      throw new Error(`${path}: no definition of quantity-name with its enum and descriptions`);
    return [path, text.replace(DEFINITION, (_, before, between) => `${before}${names}${between}${descriptions}`)];
  });
  return new Map(await Promise.all(schemas));
}

function listed(texts) {
  return `[\n${texts.map((text) => `${INDENT}  ${JSON.stringify(text)}`).join(',\n')}\n${INDENT}]`;
}
