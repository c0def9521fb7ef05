/** What the generators know about the shape of the JSON Schemas in this project. */

/** Keywords that say nothing about validity: the standard ones, then those of this project. */
export const STANDARD_ANNOTATIONS = ['title', 'description', 'examples', 'default'];
export const OWN_ANNOTATIONS = ['air-temperature-source', 'entries', 'enumDescriptions', 'quantity', 'reference'];

const annotations = new Set([...STANDARD_ANNOTATIONS, ...OWN_ANNOTATIONS]);

/** Calls `visit` with the schema and every schema inside it. */
export function walkSchemas(schema, visit) {
  visit(schema);
  for (const [keyword, value] of Object.entries(schema)) mapInner(keyword, value, (inner) => walkSchemas(inner, visit));
}

/** The schema with nothing but what decides whether a value is valid. */
export function withoutAnnotations(schema) {
  const kept = Object.entries(schema).filter(([keyword]) => !annotations.has(keyword));
  return Object.fromEntries(kept.map(([keyword, value]) => [keyword, mapInner(keyword, value, withoutAnnotations)]));
}

/** The top-level maps whose entries are checked one by one: key and the schema of one entry. */
export function entryMaps(schema) {
  return Object.entries(schema.properties)
    .filter(([, property]) => property.entries === true)
    .map(([key, property]) => [key, property.additionalProperties]);
}

/** The definition that a schema refers to, or undefined. */
export function definitionName(schema) {
  return schema.$ref?.replace('#/definitions/', '');
}

export function camelCase(kebab) {
  return kebab.replace(/-([a-z0-9])/g, (_, letter) => letter.toUpperCase());
}

export function pascalCase(kebab) {
  return camelCase(`-${kebab}`);
}

/** The value of a keyword, each schema in it replaced by what `change` makes of it. */
function mapInner(keyword, value, change) {
  switch (keyword) {
    case 'properties':
    case 'definitions':
      return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, change(inner)]));
    case 'oneOf':
      return value.map(change);
    case 'items':
    case 'propertyNames':
    case 'additionalProperties':
      return typeof value === 'object' ? change(value) : value;
    default:
      return value;
  }
}
