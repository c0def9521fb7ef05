import { readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Analysis } from '../../server/src/analysis/analysis.ts';
import { fileUri } from '../../server/src/analysis/file-location.ts';
import { Workspace } from '../../server/src/analysis/workspace.ts';
import { hoverAt } from '../../server/src/features/reading/hover.ts';
import { outlineOf } from '../../server/src/features/reading/outline.ts';
import { fileKindOf } from '../../server/src/model/schema.ts';
import { SEED_FILES } from '../fuzz/seed-files.ts';
import { applyRandomEdit, randomEdit } from './random-edits.ts';

const EDITS = Number(process.env['DEWRIGHT_RANDOM_EDITS'] ?? 2000);
const EDITS_IN_A_ROW = 20;

const FILES = SEED_FILES.map(({ path }) => path);

type Texts = ReadonlyMap<string, string>;

const KITS = textsOf(FILES.filter((path) => fileKindOf(path) === 'kit'));

/** A file and those that are read together with it: the site of a visit, the visits to a site. */
function family(path: string): Texts {
  const beside = FILES.filter((file) => dirname(file) === dirname(path) && fileKindOf(file) !== 'kit');
  const workspace = new Workspace();
  setAfresh(workspace, textsOf(beside));
  const related = [...workspace.sitesOf(fileUri(path)), ...workspace.visitsTo(fileUri(path))];
  return textsOf([path, ...beside.filter((file) => related.includes(fileUri(file)))]);
}

function textsOf(paths: readonly string[]): Texts {
  return new Map(paths.map((path) => [path, readFileSync(path, 'utf8')]));
}

/** All kits of the project, which are parsed once. */
function workspaceOfKits(): Workspace {
  const workspace = new Workspace();
  setAfresh(workspace, KITS);
  workspace.markWhole();
  return workspace;
}

/** Sets files as if they had never been seen, so that nothing can be taken from an earlier version of them. */
function setAfresh(workspace: Workspace, texts: Texts): void {
  for (const path of texts.keys()) workspace.remove(fileUri(path));
  for (const [path, text] of texts) workspace.set(fileUri(path), text);
}

/** Leaves a workspace with the kits as they were. */
function takeBack(workspace: Workspace, texts: Texts): void {
  for (const path of texts.keys()) {
    const kit = KITS.get(path);
    if (kit === undefined) workspace.remove(fileUri(path));
    else workspace.set(fileUri(path), kit);
  }
}

/** Everything that a user can see of a file, as one text. */
function shown(analysis: Analysis | undefined, text: string): string {
  if (analysis === undefined) return 'nothing';
  const { findings, accepted, parsed } = analysis;
  const spots = [0.1, 0.3, 0.5, 0.7, 0.9].map((share) => Math.floor(share * text.length));
  const hovers = spots.map((spot) => hoverAt(analysis, spot));
  const positions = spots.map((spot) => parsed.lines.positionAt(spot));
  const back = positions.map((position) => parsed.lines.offsetAt(position));
  const plain = findings.map(({ facts, ...finding }) => ({
    ...finding,
    facts: facts.map(({ id, value, at }) => ({ id, value, at })),
  }));
  return JSON.stringify({
    plain,
    accepted: accepted.map(({ rule, reason, range }) => ({ rule, reason, range })),
    hovers,
    symbols: outlineOf(analysis),
    positions,
    back,
  });
}

function expectSameAsAfresh(families: readonly Texts[], edits: number): void {
  const edit = fc.record({ member: fc.nat(), edit: randomEdit });
  const row = fc.array(edit, { minLength: EDITS_IN_A_ROW, maxLength: EDITS_IN_A_ROW });
  const kept = workspaceOfKits();
  const cold = workspaceOfKits();
  fc.assert(
    fc.property(fc.constantFrom(...families), row, (start, steps) => {
      const texts = new Map(start);
      const paths = [...texts.keys()];
      setAfresh(kept, texts);
      for (const path of paths) kept.analysis(fileUri(path));
      for (const { member, edit } of steps) {
        const path = paths[member % paths.length] ?? '';
        texts.set(path, applyRandomEdit(texts.get(path) ?? '', edit));
        kept.set(fileUri(path), texts.get(path) ?? '');
        setAfresh(cold, texts);
        for (const [other, text] of texts) {
          const file = fileUri(other);
          expect(shown(kept.analysis(file), text)).toBe(shown(cold.analysis(file), text));
        }
      }
      for (const workspace of [kept, cold]) takeBack(workspace, texts);
    }),
    { numRuns: Math.ceil(edits / EDITS_IN_A_ROW), endOnFailure: true },
  );
}

it(
  `after any row of edits a file shows what it shows when read afresh (${EDITS} edits over ${FILES.length} files)`,
  () =>
    expectSameAsAfresh(
      FILES.map((path) => textsOf([path])),
      EDITS,
    ),
  60_000 + EDITS * 100,
);

it(
  'after any row of edits of a site and of its visits each shows what it shows when read afresh',
  () => {
    const families = FILES.filter((path) => fileKindOf(path) === 'site').map(family);
    const visited = families.filter((texts) => texts.size > 1);
    expect(visited.length).toBeGreaterThan(0);
    expectSameAsAfresh(visited, EDITS / 4);
  },
  60_000 + EDITS * 100,
);
