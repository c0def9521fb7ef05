/** The rows of the overview of all points, kept file by file while nothing they depend on changes. */
import { type OverviewRow, overviewRows } from '../../views/overview.ts';
import { nextTurn } from '../next-turn.ts';
import type { Served } from '../served.ts';

interface KnownRows {
  readonly state: string;
  readonly rows: readonly OverviewRow[];
}

export interface RowsSoFar {
  readonly rows: readonly OverviewRow[];
  /** How many sites have not been looked at yet. */
  readonly left: number;
}

/** ms: then what is known is shown, and the rest is asked for again. */
const LONGEST_WAIT = 500;

/** One file after another; what the editor asks meanwhile is answered in between. */
export function overviewOf({ workspace, analysisOf }: Served, isOpen: (uri: string) => boolean) {
  const known = new Map<string, KnownRows>();
  return async (): Promise<RowsSoFar> => {
    const start = performance.now();
    const files = workspace.files('site');
    for (const gone of [...known.keys()].filter((file) => !files.includes(file))) known.delete(gone);
    const stale = files.filter((file) => known.get(file)?.state !== workspace.stateOf(file));
    let looked = 0;
    for (const file of stale) {
      if (looked > 0 && performance.now() - start > LONGEST_WAIT) break;
      looked++;
      const analysis = await analysisOf(file);
      if (analysis === undefined) continue;
      known.set(file, { state: workspace.stateOf(file), rows: overviewRows(analysis) });
      if (!isOpen(file)) workspace.release(file);
      await nextTurn();
    }
    return { rows: files.flatMap((file) => known.get(file)?.rows ?? []), left: stale.length - looked };
  };
}
