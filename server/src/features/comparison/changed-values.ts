/** What differs between the statements of two files: added, removed, renamed, changed. */
import {
  isStatedMap,
  meaningOfAll,
  type Renaming,
  type StatedMap,
  type Statement,
  showStatement,
} from './statements.ts';

export interface ChangedValue {
  readonly kind: 'added' | 'removed' | 'renamed' | 'changed';
  /** From the top level of the file, with the names of the new version. */
  readonly path: readonly string[];
  /** What was stated, or the old name; absent where it was added. */
  readonly before?: string;
  /** Absent where it was removed. */
  readonly after?: string;
}

/** What the entries of a map are called now, by their old names. */
export type NewNames = ReadonlyMap<string, string>;

/** Maps whose keys are names that the author chose: there an entry that is the same under a new name was renamed. */
const NAMED_ENTRIES: ReadonlySet<string> = new Set(['spaces', 'phases', 'points', 'signals', 'alarms']);

/** A map whose order says something. */
const ORDERED = 'phases';

export function changedValues(
  before: Statement,
  after: Statement,
  path: readonly string[],
  renaming: Renaming,
): readonly ChangedValue[] {
  const key = path.at(-1) ?? '';
  if (!isStatedMap(before) || !isStatedMap(after)) {
    if (meaningOfAll(before, renaming, key) === meaningOfAll(after, AS_IT_IS)) return [];
    return [{ kind: 'changed', path, before: showStatement(before), after: showStatement(after) }];
  }
  const names = newNames(before, after, key, renaming);
  const kept = new Set(names.values());
  return [
    ...[...before.entries].flatMap(([name, old]): readonly ChangedValue[] => {
      const now = names.get(name);
      const entry = after.entries.get(now ?? '');
      if (now === undefined || entry === undefined) {
        return [{ kind: 'removed', path: [...path, name], before: showStatement(old) }];
      }
      if (now !== name) return [{ kind: 'renamed', path: [...path, now], before: name, after: now }];
      return changedValues(old, entry, [...path, now], renaming);
    }),
    ...[...after.entries].flatMap(([name, entry]): readonly ChangedValue[] =>
      kept.has(name) ? [] : [{ kind: 'added', path: [...path, name], after: showStatement(entry) }],
    ),
    ...(key === ORDERED ? newOrder(before, after, path) : []),
  ];
}

const AS_IT_IS: Renaming = (meaning) => meaning;

/** Of several entries that say the same, the first was renamed to the first. */
export function newNames(before: StatedMap, after: StatedMap, key: string, renaming: Renaming): NewNames {
  const same = [...before.entries.keys()].filter((name) => after.entries.has(name));
  const names = new Map(same.map((name) => [name, name]));
  if (!NAMED_ENTRIES.has(key)) return names;
  const unknown = new Map(
    [...after.entries].flatMap(([name, entry]) =>
      before.entries.has(name) ? [] : [[name, meaningOfAll(entry, AS_IT_IS)] as const],
    ),
  );
  for (const [name, entry] of before.entries) {
    if (names.has(name)) continue;
    const meaning = meaningOfAll(entry, renaming);
    const now = [...unknown].find(([, candidate]) => candidate === meaning)?.[0];
    if (now === undefined) continue;
    names.set(name, now);
    unknown.delete(now);
  }
  return names;
}

function newOrder(before: StatedMap, after: StatedMap, path: readonly string[]): readonly ChangedValue[] {
  const old = [...before.entries.keys()].filter((name) => after.entries.has(name));
  const now = [...after.entries.keys()].filter((name) => before.entries.has(name));
  if (old.join() === now.join()) return [];
  return [{ kind: 'changed', path, before: `in the order ${old.join(', ')}`, after: `in the order ${now.join(', ')}` }];
}
