/** What the compiled schema validators find, at its place in the text and in the product's own words. */
import type { Cursor, PairCursor } from '../syntax/cursor.ts';
import type { Origin } from '../syntax/nodes.ts';
import { plainValueOf } from '../syntax/plain-value.ts';
import { resolveSchema, type SchemaNode } from './schema.ts';
import {
  keyMeantBy,
  missingKey,
  unknownKey,
  wrongBranch,
  wrongChoice,
  wrongName,
  wrongNameOf,
} from './structure-keys.ts';
import { type CheckedRoot, placeOf, type StructureContext } from './structure-place.ts';
import { type Break, outOfLimits, wrongPattern, wrongType, wrongWord } from './structure-values.ts';
import type { SchemaError, Validator } from './validators.ts';

/**
 * Checks one entry or root against its schema and reports every break once.
 * @param place where what concerns the whole is reported: the entry's key
 */
export function checkStructure(
  cursor: Cursor,
  place: Origin,
  schema: SchemaNode,
  validate: Validator,
  context: StructureContext,
): void {
  const { subject, problems, walker } = context;
  const value = plainValueOf(cursor, walker);
  if (value === undefined) {
    const sentence = 'Aliases here unfold to more values than any file needs, and the entry is not checked';
    problems.push({ rule: 'yaml-syntax', origin: place, sentence, suggestions: [], subject });
    return;
  }
  if (validate(value)) return;
  const root = { cursor, schema, place };
  const errors = withoutNoise(validate.errors ?? []);
  const misspelt = misspeltKeys(errors, root, context);
  for (const error of errors) {
    if (misspelt.some((key) => isMissed(key, error))) continue;
    const found = breakOf(error, root, context);
    if (found !== undefined) problems.push({ rule: 'schema', subject, ...found });
  }
}

/** Checks the key of an entry: a tag, the id of a space. @param map the schema of the map that holds it */
export function checkEntryName(pair: PairCursor, map: SchemaNode, context: StructureContext): void {
  const names = resolveSchema(context.kind, map.propertyNames ?? {});
  if (names.pattern === undefined || new RegExp(names.pattern).test(pair.key.text)) return;
  context.problems.push({ rule: 'schema', subject: context.subject, ...wrongNameOf(pair, names) });
}

/** The break in words, or undefined where nothing of the text matches it. */
function breakOf(error: SchemaError, root: CheckedRoot, context: StructureContext): Break | undefined {
  const place = placeOf(error.instancePath, root, context);
  const { params } = error;
  switch (error.keyword) {
    case 'additionalProperties':
      return unknownKey(String(params.additionalProperty), place, context);
    case 'required':
      return missingKey(String(params.missingProperty), place, context);
    case 'oneOf':
      return wrongChoice(place, context);
    case 'discriminator':
      return wrongBranch(place, context);
    case 'propertyNames':
      return wrongName(String(params.propertyName), place, context);
    case 'enum':
    case 'const':
      return wrongWord(place);
    case 'pattern':
      return wrongPattern(place);
    case 'type':
      return wrongType(place);
    default:
      return outOfLimits(error, place, context);
  }
}

interface MisspeltKey {
  readonly instancePath: string;
  readonly meant: string;
}

/** Keys that are not there because they are there under a misspelt name. */
function misspeltKeys(
  errors: readonly SchemaError[],
  root: CheckedRoot,
  context: StructureContext,
): readonly MisspeltKey[] {
  return errors.flatMap(({ keyword, instancePath, params }) => {
    if (keyword !== 'additionalProperties') return [];
    const meant = keyMeantBy(String(params.additionalProperty), placeOf(instancePath, root, context), context);
    return meant === undefined ? [] : { instancePath, meant };
  });
}

/** True where an error says that a key is missing which is only misspelt. */
function isMissed({ instancePath, meant }: MisspeltKey, error: SchemaError): boolean {
  if (error.instancePath !== instancePath) return false;
  return error.params.missingProperty === meant || (error.keyword === 'oneOf' && error.params.passingSchemas === null);
}

/** Of what the validator says about one place, only what a person would say. */
function withoutNoise(errors: readonly SchemaError[]): readonly SchemaError[] {
  const choices = errors.filter(({ keyword }) => keyword === 'oneOf');
  const own = errors.filter(({ instancePath, schemaPath }, index) => {
    const isOfOneBranch = choices.some(
      (choice) => choice.instancePath === instancePath && schemaPath.startsWith(`${choice.schemaPath}/`),
    );
    const next = errors[index + 1];
    const isSaidOfName = next?.keyword === 'propertyNames' && next.instancePath === instancePath;
    return !isOfOneBranch && !isSaidOfName;
  });
  const first = new Map<string, number>();
  for (const { instancePath, keyword } of own) {
    first.set(instancePath, Math.min(rankOf(keyword), first.get(instancePath) ?? LAST));
  }
  return own.filter(({ instancePath, keyword }) => rankOf(keyword) === first.get(instancePath));
}

/** Where one of these is broken at a place, what else is broken there follows from it. */
const DECISIVE = ['enum', 'const', 'type', 'discriminator'];
const LAST = DECISIVE.length;

function rankOf(keyword: string): number {
  const rank = DECISIVE.indexOf(keyword);
  return rank < 0 ? LAST : rank;
}
