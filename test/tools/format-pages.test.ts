import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { explain } from '../../server/src/features/explain.ts';

/** The names under every `properties`, wherever it stands. */
function keysIn(schema: unknown): readonly string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  return Object.entries(schema).flatMap(([keyword, inner]) => [
    ...(keyword === 'properties' ? Object.keys(inner) : []),
    ...keysIn(inner),
  ]);
}

describe.each(['site', 'kit', 'visit'])('the page of the %s file', (kind) => {
  const keys = new Set(keysIn(JSON.parse(readFileSync(`schemas/dew${kind}.schema.json`, 'utf8'))));
  const page = readFileSync(`server/pages/${kind}-file.md`, 'utf8');

  it('explains every key of the schema, and so does `explain`', () => {
    expect(keys.size).toBeGreaterThan(10);
    const explained = (key: string): boolean => new RegExp(`^(?:## |- \`(?:.* › )?)${key}(?:\`: .+)?$`, 'm').test(page);
    expect([...keys].filter((key) => !explained(key))).toEqual([]);
    expect([...keys].filter((key) => explain(key) === undefined)).toEqual([]);
  });

  it('has the words that a key can have', () => {
    expect(page).toMatch(/^ {2}- `[a-z-]+`: ./m);
  });
});
