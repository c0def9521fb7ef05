/** Every declared fact has a key of its own, and stands in the list that hover and JSON read. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/src/analysis/analysis.ts';
import { fileUri } from '../../server/src/analysis/file-location.ts';
import { keysOfPoint, keysOfSpace } from '../../server/src/evaluate/all-facts.ts';
import type { NamedFact } from '../../server/src/evaluate/facts/declared-fact.ts';
import { sourcesIn } from '../architecture/source-imports.ts';
import { analyseCorpusFile, corpusFiles, readCorpusFile } from '../corpus/corpus-files.ts';
import { examplesOf, fixtureFolders, fixtureOf, readMarks, workspaceOf } from '../rules/fixture.ts';

interface Declared {
  readonly file: string;
  readonly pattern: string;
}

let declared: readonly Declared[] = [];
/** Of a space, what is asked one by one and not listed. */
const ASKED_ONE_BY_ONE = ['QUANTITY/lowest', 'QUANTITY/highest', 'pressure/lowest', 'pressure/highest'];

const listed = { point: new Set<string>(), space: new Set(ASKED_ONE_BY_ONE) };
const repeated: string[] = [];

/** Facts of other subjects: a recording, a pair of readings. */
const OF_OTHERS = /^(?:recording|reading)\//;

beforeAll(async () => {
  const files = [...sourcesIn('server/src/evaluate'), ...sourcesIn('server/src/handover')];
  const modules = await Promise.all(files.map(async (file) => [file, await import(`../../${file}`)] as const));
  declared = modules.flatMap(([file, module]) => [...namedIn(module)].map(({ pattern }) => ({ file, pattern })));
  for (const analysis of analyses()) {
    if (analysis.content.kind !== 'site') continue;
    for (const point of analysis.content.site.points.values()) list('point', keysOfPoint(point));
    for (const space of analysis.content.site.spaces.values()) list('space', keysOfSpace(space));
  }
}, 120_000);

/** What a module exports by itself, or as the members of an object. */
function namedIn(module: Readonly<Record<string, unknown>>): ReadonlySet<NamedFact> {
  const members = Object.values(module).flatMap((value) => [
    value,
    ...(typeof value === 'object' && value !== null ? Object.values(value) : []),
  ]);
  return new Set(members.filter(isNamedFact));
}

function isNamedFact(value: unknown): value is NamedFact {
  const isHolder = typeof value === 'function' || (typeof value === 'object' && value !== null);
  return isHolder && 'pattern' in value && typeof value.pattern === 'string';
}

function list(kind: 'point' | 'space', keys: readonly { readonly id: string; readonly pattern: string }[]): void {
  for (const { pattern } of keys) listed[kind].add(pattern);
  const ids = keys.map(({ id }) => id);
  repeated.push(...ids.filter((id, index) => ids.indexOf(id) !== index));
}

function analyses(): readonly Analysis[] {
  const corpora = (['sound', 'faulty'] as const).flatMap((corpus) =>
    corpusFiles(corpus).map((file) => analyseCorpusFile(corpus, file, readMarks(readCorpusFile(corpus, file)).text)),
  );
  const fixtures = fixtureFolders().flatMap((folder) => {
    const fixture = fixtureOf(folder);
    return examplesOf(fixture).flatMap(
      (file) => workspaceOf(fixture, file, new Map()).analysis(fileUri(fixture.path(file))) ?? [],
    );
  });
  return [...corpora, ...fixtures];
}

describe('the declared facts', () => {
  it('are found', () => {
    expect(declared.length).toBeGreaterThan(80);
  });

  it('have keys of their own; a space and a point may each have one of the same key', () => {
    const patterns = declared.map(({ pattern }) => pattern);
    const often = declared.filter(({ pattern }) => {
      const subjects = Number(listed.point.has(pattern)) + Number(listed.space.has(pattern));
      return patterns.filter((other) => other === pattern).length > Math.max(1, subjects);
    });
    expect(often).toEqual([]);
  });

  it('stand among the facts of a point or a space', () => {
    const unlisted = declared.filter(
      ({ pattern }) => !listed.point.has(pattern) && !listed.space.has(pattern) && !OF_OTHERS.test(pattern),
    );
    expect(unlisted).toEqual([]);
  });

  it('stand there once', () => {
    expect(repeated).toEqual([]);
  });
});
