/** The rows of the overview of all points, kept file by file while nothing they depend on changes. */
import { type OverviewRow, overviewRows } from '../views/overview.ts';
import type { Served } from './served.ts';

interface KnownRows {
  readonly state: string;
  readonly rows: readonly OverviewRow[];
}

/** One file after another; what the editor asks meanwhile is answered in between. */
export function overviewOf({ workspace, analysisOf }: Served, isOpen: (uri: string) => boolean) {
  const known = new Map<string, KnownRows>();
  return async (): Promise<readonly OverviewRow[]> => {
    const files = workspace.files('site');
    for (const gone of [...known.keys()].filter((file) => !files.includes(file))) known.delete(gone);
    for (const file of files) {
      if (known.get(file)?.state === workspace.stateOf(file)) continue;
      const analysis = await analysisOf(file);
      if (analysis === undefined) continue;
      known.set(file, { state: workspace.stateOf(file), rows: overviewRows(analysis) });
      if (!isOpen(file)) workspace.release(file);
      await new Promise((resume) => setTimeout(resume));
    }
    return files.flatMap((file) => known.get(file)?.rows ?? []);
  };
}
