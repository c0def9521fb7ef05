/** Makes the pages of the file formats: every key of each kind of file, and the quantities with their units. */
import { fromSources } from './from-sources.mjs';

/** @returns {Promise<Map<string, string>>} pages by their path from the project's root */
export async function generateFormatPages() {
  const sources = await fromSources(`
    export { FILE_KINDS, SCHEMAS } from './server/src/model/schema.ts';
    export { DIMENSIONS } from './server/src/quantity/dimension.ts';
    export { QUANTITY_NAMES, quantityInfo } from './server/src/quantity/quantities.ts';
    export { choices, keysOfFile, valueWords } from './server/src/features/reading/explain-keys.ts';
  `);
  const pages = sources.FILE_KINDS.map((kind) => [`server/pages/${kind}-file.md`, filePage(kind, sources)]);
  return new Map([...pages, ['server/pages/quantities.md', quantityPage(sources)]]);
}

/** A section for each part at the top of the file, and in it a line for each key. */
function filePage(kind, { SCHEMAS, keysOfFile, ...words }) {
  const { title, description } = SCHEMAS[kind];
  const lines = keysOfFile(kind).map((place) => keyLine(place, words));
  const text = `# ${title}: NAME.dew${kind}.yaml\n\n${description}\n${lines.join('\n')}`;
  return `${text.replace(/\n{3,}/g, '\n\n').trimEnd()}\n`;
}

function keyLine({ path, required, schema }, { choices, valueWords }) {
  const [, top, ...inner] = path;
  const about = [required ? '**Required.**' : '', schema.description ?? '', valueWords(schema)]
    .filter(Boolean)
    .join(' ');
  if (inner.length === 0) return `\n## ${top}\n\n${about}\n`;
  const line = `- \`${inner.join(' › ')}\`: ${about}`;
  return [line, ...choices(schema).map((choice) => `  - ${choice}`)].join('\n');
}

function quantityPage({ DIMENSIONS, QUANTITY_NAMES, quantityInfo }) {
  const yes = (needed) => (needed ? 'yes' : 'no');
  const quantities = QUANTITY_NAMES.map((name) => {
    const { about, dimension, needsAirTemperature, needsPressure } = quantityInfo(name);
    const needs = `${yes(needsAirTemperature)} | ${yes(needsPressure)}`;
    return `| \`${name}\` | ${about} | ${symbols(DIMENSIONS[dimension])} | ${needs} |`;
  });
  const dimensions = Object.entries(DIMENSIONS).map(
    ([name, info]) => `| ${name.replaceAll('-', ' ')} | ${symbols(info)} | \`${info.example}\` |`,
  );
  return [
    '# Quantities and units\n',
    'A value is a number with its unit, a range is `LOW .. HIGH UNIT`. A pressure with `(g)` behind its unit is a gauge',
    'pressure.\n',
    '## Quantities\n',
    '| quantity | what it is | units | needs the air temperature | needs the pressure |',
    '| --- | --- | --- | --- | --- |',
    ...quantities,
    '\n## Units\n',
    '| of | units, the usual one first | for example |',
    '| --- | --- | --- |',
    ...dimensions,
    '',
  ].join('\n');
}

/** Every spelling that is read. */
function symbols({ units }) {
  return units.map(({ symbol, aliases }) => [symbol, ...aliases].map((each) => `\`${each}\``).join(' or ')).join(', ');
}
