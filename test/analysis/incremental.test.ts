import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Analysis } from '../../server/src/analysis/analysis.ts';
import { fileUri } from '../../server/src/analysis/file-location.ts';
import { Workspace } from '../../server/src/analysis/workspace.ts';
import { hoverAt } from '../../server/src/features/hover.ts';
import { outlineOf } from '../../server/src/features/outline.ts';
import { fileKindOf } from '../../server/src/model/schema.ts';
import { applyRandomEdit, randomEdit } from './random-edits.ts';

const PROJECT = fileURLToPath(new URL('../../', import.meta.url));
const EDITS = Number(process.env['DEWRIGHT_RANDOM_EDITS'] ?? 2000);
const EDITS_IN_A_ROW = 20;

/** Every sample, fixture and corpus file. */
const FILES = ['samples', 'test/rules', 'test/corpus'].flatMap((folder) =>
  readdirSync(join(PROJECT, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => fileKindOf(file) !== undefined)
    .map((file) => join(PROJECT, folder, file)),
);

function workspaceWith(path: string, text: string): Workspace {
  const workspace = new Workspace();
  for (const kit of FILES) {
    if (fileKindOf(kit) === 'kit' && kit !== path) workspace.set(fileUri(kit), readFileSync(kit, 'utf8'));
  }
  workspace.set(fileUri(path), text);
  workspace.markWhole();
  return workspace;
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

it(
  `after any row of edits a file shows what it shows when read afresh (${EDITS} edits over ${FILES.length} files)`,
  () => {
    const runs = Math.ceil(EDITS / EDITS_IN_A_ROW);
    const edits = fc.array(randomEdit, { minLength: EDITS_IN_A_ROW, maxLength: EDITS_IN_A_ROW });
    fc.assert(
      fc.property(fc.nat(FILES.length - 1), edits, (index, row) => {
        const path = FILES[index] ?? '';
        const file = fileUri(path);
        let text = readFileSync(path, 'utf8');
        const kept = workspaceWith(path, text);
        kept.analysis(file);
        for (const edit of row) {
          text = applyRandomEdit(text, edit);
          kept.set(file, text);
          expect(shown(kept.analysis(file), text)).toBe(shown(workspaceWith(path, text).analysis(file), text));
        }
      }),
      { numRuns: runs, endOnFailure: true },
    );
  },
  60_000 + EDITS * 100,
);
