/** A parsed file to its model: checks the structure, lowers the values, keeps every entry by its name. */
import { type Cursor, type ForeignAnchors, type PairCursor, rootCursor, TreeWalker } from '../syntax/cursor.ts';
import type { Origin, Part, SyntaxTree } from '../syntax/nodes.ts';
import { type Located, locatedPair } from './located.ts';
import { lowerNode } from './lower.ts';
import type { ModelProblem } from './problem.ts';
import { checkRoot } from './root-structure.ts';
import { childSchema, ENTRY_KEYS, type FileKind, SCHEMAS } from './schema.ts';
import { checkEntryName, checkStructure } from './structure.ts';
import { validatorOfEntry } from './validators.ts';

/** One named entry of a map such as `points`. */
export interface Entry<Value> {
  readonly name: string;
  readonly keyOrigin: Origin;
  /** The map that holds it, as far as it is in the same part: what an edit adds to or removes from. */
  readonly map: Cursor;
  /** Absent where nothing of the entry can be read. */
  readonly located: Located<Value> | undefined;
  /** The YAML of the entry does not parse: what is missing in it is not missed. */
  readonly broken: boolean;
}

/** What one part gives: its entry, or top-level values, and what is wrong with them. */
export interface ReadPart {
  readonly topLevel: readonly PairCursor[];
  readonly values: readonly (readonly [key: string, value: Located<unknown>])[];
  readonly entries: readonly (readonly [mapName: string, list: readonly Entry<unknown>[]])[];
  readonly problems: readonly ModelProblem[];
  /** The YAML of the part does not parse. */
  readonly broken: boolean;
}

export interface FileModel {
  readonly kind: FileKind;
  readonly values: ReadonlyMap<string, Located<unknown>>;
  readonly entries: ReadonlyMap<string, ReadonlyMap<string, Entry<unknown>>>;
  readonly problems: readonly ModelProblem[];
  /** Top-level keys below which the YAML does not parse somewhere, so that an entry may not be seen. */
  readonly brokenKeys: ReadonlySet<string>;
}

/** Reads one part alone; equal parts with equal foreign anchors give equal results. */
export function readPart(kind: FileKind, part: Part, foreign: ForeignAnchors): ReadPart {
  const walker = new TreeWalker(foreign);
  const problems: ModelProblem[] = syntaxProblems(part, walker);
  const broken = problems.length > 0;
  const values: [string, Located<unknown>][] = [];
  const entries: [string, Entry<unknown>[]][] = [];
  const root = rootCursor(part);
  const context = { kind, walker, problems, broken };
  const mapName = part.path.length === 2 ? part.path[0] : undefined;
  if (mapName !== undefined && root !== undefined) {
    entries.push([mapName, readEntries(mapName, root, context)]);
    return { topLevel: [], values, entries, problems, broken };
  }
  const pairs = root === undefined ? [] : walker.pairs(root);
  for (const pair of pairs) {
    const name = pair.key.text;
    const schema = childSchema(kind, SCHEMAS[kind], name);
    if (ENTRY_KEYS[kind].has(name) && pair.value.node.kind === 'map') {
      entries.push([name, readEntries(name, pair.value, context)]);
    } else if (schema !== undefined) {
      const value = lowerNode(pair.value, schema, { kind, walker, problems, subject: '' }, name);
      if (value !== undefined) values.push([name, locatedPair(pair, value)]);
    }
  }
  return { topLevel: pairs, values, entries, problems, broken };
}

/** Joins the parts of a file, in the order of the text. */
export function joinParts(
  kind: FileKind,
  tree: SyntaxTree,
  parts: readonly ReadPart[],
  foreign: ForeignAnchors,
): FileModel {
  const values = new Map<string, Located<unknown>>();
  const entries = new Map<string, Map<string, Entry<unknown>>>();
  const problems: ModelProblem[] = [];
  const keys = new Map<string, Origin>();
  for (const part of parts) {
    problems.push(...part.problems);
    for (const { key, keyOrigin } of part.topLevel) {
      const first = keys.get(key.text);
      if (first === undefined) keys.set(key.text, keyOrigin);
      else reportTwice(key.text, first, keyOrigin, '', problems);
    }
    for (const [name, value] of part.values) if (!values.has(name)) values.set(name, value);
    for (const [mapName, list] of part.entries) {
      const map = entries.get(mapName) ?? new Map<string, Entry<unknown>>();
      entries.set(mapName, map);
      for (const entry of list) {
        const first = map.get(entry.name);
        if (first === undefined) map.set(entry.name, entry);
        else reportTwice(entry.name, first.keyOrigin, entry.keyOrigin, entry.name, problems);
      }
    }
  }
  const broken = tree.parts.filter((_, index) => parts[index]?.broken === true).map(({ part }) => part.path);
  if (broken.every((path) => path.length === 2)) {
    const topLevel = parts.flatMap((part) => part.topLevel);
    checkRoot(kind, tree, topLevel, new TreeWalker(foreign), problems);
  }
  const brokenKeys = broken.flatMap(([key]) => (key === undefined ? Object.keys(SCHEMAS[kind].properties ?? {}) : key));
  return { kind, values, entries, problems, brokenKeys: new Set(brokenKeys) };
}

interface ReadContext {
  readonly kind: FileKind;
  readonly walker: TreeWalker;
  readonly problems: ModelProblem[];
  readonly broken: boolean;
}

function readEntries(mapName: string, map: Cursor, context: ReadContext): Entry<unknown>[] {
  const { kind, walker, problems, broken } = context;
  const mapSchema = childSchema(kind, SCHEMAS[kind], mapName) ?? {};
  const validate = validatorOfEntry(kind, mapName);
  return walker.pairs(map).map((pair) => {
    const subject = pair.key.text;
    const schema = childSchema(kind, mapSchema, subject) ?? {};
    const place = { kind, walker, problems, subject };
    if (!broken && validate !== undefined) {
      checkEntryName(pair, mapSchema, place);
      checkStructure(pair.value, pair.keyOrigin, schema, validate, place);
    }
    const value = lowerNode(pair.value, schema, place);
    const located = typeof value === 'object' ? locatedPair(pair, value) : undefined;
    return { name: subject, keyOrigin: pair.keyOrigin, map, located, broken };
  });
}

function syntaxProblems(part: Part, walker: TreeWalker): ModelProblem[] {
  const subject = part.path[1] ?? '';
  const problems: ModelProblem[] = part.problems.map(({ start, end, sentence, related }) => ({
    rule: 'yaml-syntax',
    origin: { part, start, end },
    sentence,
    suggestions: [],
    subject,
    ...(related === undefined ? {} : { related: { sentence: 'It is first given here', origin: { part, ...related } } }),
  }));
  for (const alias of part.foreignAliases) {
    if (walker.at(part, alias) !== undefined) continue;
    const origin = { part, start: alias.start, end: alias.end };
    const sentence = `The alias “*${alias.name}” has no anchor “&${alias.name}” above it`;
    problems.push({ rule: 'yaml-syntax', origin, sentence, suggestions: [], subject });
  }
  return problems;
}

function reportTwice(name: string, first: Origin, origin: Origin, subject: string, problems: ModelProblem[]): void {
  if (first.part === origin.part && first.start === origin.start) return;
  const related = { sentence: 'It is first given here', origin: first };
  const sentence = `“${name}” is given twice; the first one counts`;
  problems.push({ rule: 'yaml-syntax', origin, sentence, suggestions: [], related, subject });
}
