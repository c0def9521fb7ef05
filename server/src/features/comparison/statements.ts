/**
 * What a file states, apart from how it is written: units, order, comments, quotes, aliases and stated defaults make no
 * difference here.
 */
import type { Located } from '../../model/located.ts';
import type { FileKind } from '../../model/schema.ts';
import { schemaAt } from '../support/schema-path.ts';

export type Statement = StatedValue | StatedMap;

export interface StatedValue {
  /** As it is written. */
  readonly text: string;
  /** The same for every way to write it. */
  readonly meaning: string;
}

export interface StatedMap {
  readonly entries: ReadonlyMap<string, Statement>;
}

export function isStatedMap(statement: Statement): statement is StatedMap {
  return 'entries' in statement;
}

/** Digits beyond these come from the conversion of units. */
const SIGNIFICANT_DIGITS = 12;

/** @param path of the value from the top level of its file */
export function statementOf(kind: FileKind, path: readonly string[], located: Located<unknown>): Statement {
  const { value, cursor } = located;
  if (cursor.node.kind === 'scalar') return { text: cursor.node.text, meaning: meaningOf(value) };
  const entries = new Map<string, Statement>();
  const kindOf = discriminatorOf(value);
  for (const [name, item] of itemsOf(value)) {
    const below = [...path, name];
    const statement = isLocated(item) ? statementOf(kind, below, item) : stated(String(item));
    if (!isDefault(statement, kind, below, kindOf)) entries.set(name, statement);
  }
  return { entries };
}

/** What a value means now, where a name in it has changed. @param key of the value */
export type Renaming = (meaning: string, key: string) => string;

/** Two statements mean the same where these are the same. */
export function meaningOfAll(statement: Statement, renaming: Renaming, key = ''): string {
  if (!isStatedMap(statement)) return renaming(statement.meaning, key);
  const entries = [...statement.entries].map(([name, entry]) => [name, meaningOfAll(entry, renaming, name)]);
  return JSON.stringify(entries.sort(([one = ''], [other = '']) => (one < other ? -1 : 1)));
}

/** `continuous`, `{ mode: continuous, rise: 6 K }` */
export function showStatement(statement: Statement): string {
  if (!isStatedMap(statement)) return statement.text;
  const entries = [...statement.entries].map(([name, entry]) => {
    const shown = showStatement(entry);
    return !isStatedMap(entry) && name === entry.text ? name : `${name}: ${shown}`;
  });
  return `{ ${entries.join(', ')} }`;
}

function stated(text: string): StatedValue {
  return { text, meaning: meaningOf(text) };
}

/** The same for every way to write a value: the unit in which a quantity was written is no part of it. */
export function meaningOf(value: unknown): string {
  return JSON.stringify(value, (key, part: unknown) => {
    if (key === 'unit') return undefined;
    return typeof part === 'number' ? Number(part.toPrecision(SIGNIFICANT_DIGITS)) : part;
  });
}

/** The entries of a map, and the items of a list: a plain one is known by what it says, so that order does not count. */
function itemsOf(value: unknown): readonly (readonly [string, unknown])[] {
  if (value instanceof Map) return [...value];
  if (Array.isArray(value)) return value.map((item: Located<unknown>, index) => [itemName(item, index), item]);
  return Object.entries(value ?? {}).flatMap(([key, item]: [string, unknown]) =>
    key === 'others' && item instanceof Map ? itemsOf(item) : [[keyAsWritten(key), item] as const],
  );
}

function itemName({ cursor }: Located<unknown>, index: number): string {
  return cursor.node.kind === 'scalar' ? cursor.node.text : String(index + 1);
}

/** `humidityProbe` → `humidity-probe` */
function keyAsWritten(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

function isLocated(item: unknown): item is Located<unknown> {
  return typeof item === 'object' && item !== null && 'cursor' in item;
}

function discriminatorOf(value: unknown): string | undefined {
  const kind = typeof value === 'object' && value !== null && 'kind' in value ? value.kind : undefined;
  return typeof kind === 'string' ? kind : undefined;
}

/** What is left out says as much. */
function isDefault(statement: Statement, kind: FileKind, path: readonly string[], kindOf: string | undefined): boolean {
  if (isStatedMap(statement)) return statement.entries.size === 0;
  const usual = schemaAt(kind, path, kindOf)?.schema.default;
  return usual !== undefined && String(usual) === statement.text;
}
