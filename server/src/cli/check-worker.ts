/** One thread of a check over many files; see check-in-workers.ts. */
import { parentPort, workerData } from 'node:worker_threads';
import { filePath, fileUri } from '../analysis/file-location.ts';
import type { Failed, Known, Reported, Share, Told } from './check-in-workers.ts';
import { reportOf } from './file-report.ts';
import { loadFiles, loadRelated, readText } from './load.ts';
import { failureWords } from './problem.ts';
import { readRecordings } from './recordings.ts';

export function runWorker(): void {
  const port = parentPort;
  if (port === null) return;
  const answer = async (work: () => Told | Promise<Reported>): Promise<void> => {
    try {
      port.postMessage(await work());
    } catch (error) {
      port.postMessage({ kind: 'failed', message: failureWords(error) } satisfies Failed);
    }
  };
  const { files, wanted, options } = workerData as Share;
  void answer(() => {
    const workspace = loadFiles(files);
    port.once('message', ({ related, elsewhere }: Known) =>
      answer(async () => {
        for (const path of related) if (!workspace.has(fileUri(path))) workspace.set(fileUri(path), readText(path));
        for (const path of wanted) loadRelated(workspace, path, elsewhere.uses === undefined);
        workspace.markWhole(elsewhere);
        const unread = await readRecordings(workspace, wanted);
        return {
          kind: 'reported',
          unread,
          reports: wanted.flatMap((path) => reportOf(workspace, fileUri(path), options) ?? []),
        };
      }),
    );
    return {
      kind: 'told',
      words: workspace.files().flatMap((file) => {
        const words = workspace.wordsOf(file);
        return words === undefined ? [] : [[filePath(file), words] as const];
      }),
    };
  });
}
