/** Writes the TypeScript types of the model: what a file says, each value with its place. */
import { camelCase, definitionName, pascalCase } from './generate-schema-walk.mjs';

const lineWidth = 120;

/** Types that are not made from the schemas. */
const handWrittenTypes = `import type { QuantityName } from '../quantity/quantities.ts';
import type { Quantity, QuantityRange } from '../quantity/quantity.ts';
import type { AirTemperatureSource } from './air-temperature-source.ts';
import type { Located } from './located.ts';

/** \`YYYY-MM-DD\`, a day that exists. */
export type CalendarDate = string;
`;

/**
 * @param {ReadonlyMap<string, object>} schemas by file kind: site, kit, visit
 * @returns {string}
 */
export function generateModelTypes(schemas) {
  const declarations = new Map();
  for (const [kind, schema] of schemas) {
    declare(declarations, `${kind}-file`, schema, schema.definitions);
    for (const [name, definition] of Object.entries(schema.definitions)) {
      if (isNamed(definition) && name !== 'quantity-name') declare(declarations, name, definition, schema.definitions);
    }
  }
  return `${handWrittenTypes}\n${[...declarations.values()].join('\n\n')}\n`;
}

/** Two schemas may define the same thing, but not two things under one name. */
function declare(declarations, name, schema, definitions) {
  const declaration = documented(schema.description, '') + declarationOf(pascalCase(name), schema, definitions);
  const earlier = declarations.get(name) ?? declaration;
  if (earlier !== declaration) throw new Error(`Two schemas define ${name} differently.`);
  declarations.set(name, declaration);
}

/** Definitions that get a type of their own; a list or a plain text is written where it is used. */
function isNamed(definition) {
  return (definition.properties ?? definition.enum ?? definition.discriminator) !== undefined;
}

function declarationOf(typeName, schema, definitions) {
  if (schema.enum !== undefined) return typeAlias(typeName, schema.enum.map(literal));
  if (schema.discriminator !== undefined) {
    return typeAlias(
      typeName,
      schema.oneOf.map((branch) => pascalCase(definitionName(branch))),
    );
  }
  const members = Object.entries(schema.properties).map(([key, property]) => member(key, property, definitions));
  if (typeof schema.additionalProperties === 'object')
    members.push(otherKeys(schema.additionalProperties, definitions));
  return `export interface ${typeName} {\n${members.join('\n')}\n}`;
}

function member(key, property, definitions) {
  const description = property.description ?? definitions[definitionName(property)].description;
  // The kind that tells the members of a union apart has to be a plain literal for the compiler to see it.
  const type =
    typeof property.const === 'string'
      ? `${camelCase(key)}: ${literal(property.const)}`
      : `${camelCase(key)}?: Located<${valueType(property, definitions)}>`;
  return `${documented(description, '  ')}  readonly ${type};`;
}

function otherKeys(schema, definitions) {
  const values = valueType(schema, definitions);
  return `${documented(schema.description, '  ')}  readonly others: ReadonlyMap<string, Located<${values}>>;`;
}

function valueType(schema, definitions) {
  const name = definitionName(schema);
  if (name !== undefined && !isNamed(definitions[name])) return valueType(definitions[name], definitions);
  if (name !== undefined) return [pascalCase(name), ...quantityType(definitions[name])].join(' | ');
  if (schema['air-temperature-source']) return 'AirTemperatureSource';
  if (schema.format === 'date') return 'CalendarDate';
  if (schema.quantity !== undefined) return quantityType(schema).join();
  if (schema.enum !== undefined) return schema.enum.map(literal).join(' | ');
  if (schema.const !== undefined) return literal(schema.const);
  if (schema.type === 'array') return `readonly Located<${valueType(schema.items, definitions)}>[]`;
  if (schema.type === 'object') {
    const keys = definitionName(schema.propertyNames) === 'quantity-name' ? 'QuantityName' : 'string';
    return `ReadonlyMap<${keys}, Located<${valueType(schema.additionalProperties, definitions)}>>`;
  }
  return [schema.type].flat().map(scalarType).join(' | ');
}

function quantityType(schema) {
  if (schema.quantity === undefined) return [];
  return [schema.quantity.form === 'range' ? 'QuantityRange' : 'Quantity'];
}

function scalarType(type) {
  return type === 'integer' ? 'number' : type;
}

function literal(value) {
  return typeof value === 'string' ? `'${value}'` : String(value);
}

function typeAlias(typeName, members) {
  const oneLine = `export type ${typeName} = ${members.join(' | ')};`;
  if (oneLine.length <= lineWidth) return oneLine;
  return `export type ${typeName} =\n${members.map((member) => `  | ${member}`).join('\n')};`;
}

function documented(description, indent) {
  const oneLine = `${indent}/** ${description} */\n`;
  if (oneLine.length <= lineWidth + 1) return oneLine;
  const lines = [`${indent} *`];
  for (const word of description.split(' ')) {
    if (`${lines.at(-1)} ${word}`.length > lineWidth) lines.push(`${indent} *`);
    lines.push(`${lines.pop()} ${word}`);
  }
  return `${indent}/**\n${lines.join('\n')}\n${indent} */\n`;
}
