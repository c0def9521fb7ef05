import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { explain } from '../../server/src/features/reading/explain.ts';

/** The names under every `properties`, wherever it stands. */
function keysIn(schema: unknown): readonly string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  return Object.entries(schema).flatMap(([keyword, inner]) => [
    ...(keyword === 'properties' ? Object.keys(inner) : []),
    ...keysIn(inner),
  ]);
}

/** The words that the lists under every `enum` allow, but for those that are one number. */
function wordsIn(schema: unknown): readonly string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  return Object.entries(schema).flatMap(([keyword, inner]) =>
    keyword === 'enum' ? inner.filter((word: unknown) => typeof word === 'string') : wordsIn(inner),
  );
}

describe.each(['site', 'kit', 'visit'])('the page of the %s file', (kind) => {
  const schema: unknown = JSON.parse(readFileSync(`schemas/dew${kind}.schema.json`, 'utf8'));
  const keys = new Set(keysIn(schema));
  const page = readFileSync(`server/pages/${kind}-file.md`, 'utf8');

  it('explains every key of the schema, and so does `explain`', () => {
    expect(keys.size).toBeGreaterThan(10);
    const explained = (key: string): boolean => new RegExp(`^(?:## |- \`(?:.* › )?)${key}(?:\`: .+)?$`, 'm').test(page);
    expect([...keys].filter((key) => !explained(key))).toEqual([]);
    expect([...keys].filter((key) => explain(key) === undefined)).toEqual([]);
  });

  it('has every word that a value, or an entry of a list or map, can be, with its meaning', () => {
    const words = new Set(wordsIn(schema));
    expect(words.size).toBeGreaterThan(2);
    expect([...words].filter((word) => !new RegExp(`^ {2}- \`${word}\`: .`, 'm').test(page))).toEqual([]);
  });
});
