/** One thread of a check over many files; see check-in-workers.ts. */
import { parentPort, workerData } from 'node:worker_threads';
import { filePath, fileUri } from '../analysis/file-location.ts';
import { siteModelOf } from '../model/file-models.ts';
import type { Failed, Known, Reported, Share, Told } from './check-in-workers.ts';
import { reportOf } from './file-report.ts';
import { loadWorkspace, readText } from './load.ts';
import { CallProblem } from './problem.ts';

export function runWorker(): void {
  const port = parentPort;
  if (port === null) return;
  const answer = (work: () => Told | Reported): void => {
    try {
      port.postMessage(work());
    } catch (error) {
      const message = error instanceof CallProblem ? error.message : 'something went wrong in the program itself';
      port.postMessage({ kind: 'failed', message } satisfies Failed);
    }
  };
  const { files, wanted, options } = workerData as Share;
  answer(() => {
    const workspace = loadWorkspace({ files, whole: false });
    port.once('message', ({ sharing, uses }: Known) =>
      answer(() => {
        for (const path of sharing) if (!workspace.has(fileUri(path))) workspace.set(fileUri(path), readText(path));
        if (uses !== undefined) workspace.markWhole(uses);
        return {
          kind: 'reported',
          reports: wanted.flatMap((path) => reportOf(workspace, fileUri(path), options) ?? []),
        };
      }),
    );
    const sites = workspace.files('site');
    return {
      kind: 'told',
      tags: sites.flatMap((file) => {
        const parsed = workspace.parsed(file);
        if (parsed === undefined) return [];
        return [...siteModelOf(parsed.model).points.keys()].map((tag) => [tag, filePath(file)] as const);
      }),
      uses: workspace.uses(),
    };
  });
}
