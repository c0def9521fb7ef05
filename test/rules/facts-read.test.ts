/**
 * The page of a rule lists what it compares. Listened to over all fixtures: a rule asks for every fact that it lists, and
 * lists every fact whose number its findings name.
 */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { FactKey, NamedFact } from '../../server/src/evaluate/facts/declared-fact.ts';
import { RememberedFacts } from '../../server/src/evaluate/facts/remembered-facts.ts';
import { RULES } from '../../server/src/rules/registry.generated.ts';
import type { FindingDraft, Rule } from '../../server/src/rules/rule.ts';
import { examplesOf, findingsOf, fixtureFolders, fixtureOf } from './fixture.ts';

type Key = FactKey<never>;
type Check = (view: never) => readonly FindingDraft[];

/** What each rule asked for while it looked, and the facts of what it found. */
const asked = new Map<string, Set<Key>>(RULES.map(({ name }) => [name, new Set()]));
const shown = new Map<string, Set<string>>(RULES.map(({ name }) => [name, new Set()]));
/** Every key that anybody asked for, by the ids that it was asked with. */
const patterns = new Map<string, string>();

const { get } = RememberedFacts.prototype;
const checks = RULES.map((rule) => ({ rule, check: rule.check }));
let looking: Rule | undefined;

function listening(rule: Rule, check: Check): Check {
  return (view) => {
    looking = rule;
    const found = check(view);
    for (const { related, fixes } of found) [related?.(), fixes?.()];
    looking = undefined;
    for (const { facts = [] } of found) for (const { id } of facts) shown.get(rule.name)?.add(id);
    return found;
  };
}

beforeAll(() => {
  const listen = function (this: RememberedFacts<unknown>, key: Key): unknown {
    if (looking !== undefined) asked.get(looking.name)?.add(key);
    patterns.set(key.id, key.pattern);
    return get.call(this, key as FactKey<unknown>);
  };
  RememberedFacts.prototype.get = listen as typeof get;
  for (const { rule, check } of checks) {
    const heard = Object.entries(check).map(([look, one]) => [look, listening(rule, one as Check)]);
    Object.assign(rule, { check: Object.fromEntries(heard) });
  }
  for (const folder of fixtureFolders()) {
    const fixture = fixtureOf(folder);
    for (const file of examplesOf(fixture)) findingsOf(fixture, file, new Map());
  }
}, 120_000);

afterAll(() => {
  RememberedFacts.prototype.get = get;
  for (const { rule, check } of checks) Object.assign(rule, { check });
});

/** What was worked out for an earlier rule is not asked for again, and shown all the same. */
function askedOrShown(name: string): readonly Pick<Key, 'id' | 'pattern'>[] {
  const ids = [...(shown.get(name) ?? [])];
  return [...(asked.get(name) ?? []), ...ids.map((id) => ({ id, pattern: patterns.get(id) ?? id }))];
}

/** A rule that names one fact of a family means that one. */
function means(
  named: NamedFact,
  { id, pattern }: { readonly id: string; readonly pattern: string | undefined },
): boolean {
  return named.pattern === pattern && (named.id === undefined || named.id === id);
}

it.each(RULES.map((rule) => [rule.name, rule] as const))('%s asks for every fact that it lists', (name, { facts }) => {
  const keys = askedOrShown(name);
  const idle = facts.filter((named) => !keys.some((key) => means(named, key)));
  expect(idle.map(({ id, pattern }) => id ?? pattern)).toEqual([]);
});

/** It repeats what a step of the handover says, whose numbers are those of the step. */
const REPEATS_STEPS = 'step-open';

const SHOWING = RULES.filter(({ name }) => name !== REPEATS_STEPS);

it.each(SHOWING.map((rule) => [rule.name, rule] as const))('%s lists every fact that it shows', (name, { facts }) => {
  const ids = [...(shown.get(name) ?? [])];
  const unlisted = ids.filter((id) => !facts.some((named) => means(named, { id, pattern: patterns.get(id) })));
  expect(unlisted).toEqual([]);
});
