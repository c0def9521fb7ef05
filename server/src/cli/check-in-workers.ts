/**
 * Checks many files on several threads. A tag has to be unique over all files, a model may be used by any site, and a
 * site and its visits are read together, so it goes in two rounds: first every thread reads its share and tells what
 * it gives and uses, then it checks its share with what the others told. The result is the same as on one thread.
 */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { Elsewhere } from '../analysis/workspace.ts';
import type { FileWords } from '../analysis/workspace-index.ts';
import { groupedBy } from '../base/grouped.ts';
import type { FileReport, ReportOptions } from './file-report.ts';
import type { FoundFiles } from './find-files.ts';
import { CallProblem } from './problem.ts';
import { tellUnread, type UnreadRecording } from './recordings.ts';

/** Below this many files starting threads costs more than it saves. */
export const WORTH_WORKERS = 200;
const MOST_WORKERS = 8;

/** What a thread is given at its start. */
export interface Share {
  readonly files: readonly string[];
  readonly wanted: readonly string[];
  readonly options: ReportOptions;
}

/** The first answer: what its files say that concerns others. */
export interface Told {
  readonly kind: 'told';
  readonly words: readonly (readonly [path: string, words: FileWords])[];
}

/** The second question. */
export interface Known {
  /** The files of other threads that share a tag with another, or belong to the same site as one of this thread. */
  readonly related: readonly string[];
  readonly elsewhere: Elsewhere;
}

export interface Reported {
  readonly kind: 'reported';
  readonly reports: readonly FileReport[];
  readonly unread: readonly UnreadRecording[];
}

export interface Failed {
  readonly kind: 'failed';
  readonly message: string;
}

export async function checkInWorkers(
  { files, whole }: FoundFiles,
  wanted: readonly string[],
  options: ReportOptions,
): Promise<readonly FileReport[]> {
  const count = Math.min(MOST_WORKERS, Math.max(2, availableParallelism()));
  const wantedSet = new Set(wanted);
  const shares = Array.from({ length: count }, (_, index): Share => {
    const own = files.filter((_file, position) => position % count === index);
    return { files: own, wanted: own.filter((file) => wantedSet.has(file)), options };
  });
  const workers = shares.map((share) => new Worker(__filename, { workerData: share }));
  try {
    const told = await Promise.all(workers.map((worker) => answerOf<Told>(worker)));
    const words = told.flatMap((answer) => answer.words);
    const sharing = filesSharing(words, ({ tags }) => tags).flat();
    const siteIds = words.flatMap(([, { siteId }]) => siteId ?? []);
    const uses = whole ? words.flatMap(([, file]) => file.uses) : undefined;
    const ofOneSite = filesSharing(words, ({ siteId, visited }) => siteId ?? visited ?? []);
    const answers = workers.map((worker) => answerOf<Reported>(worker));
    workers.forEach((worker, index) => {
      const own = new Set(shares[index]?.files);
      const needed = ofOneSite.filter((files) => files.some((file) => own.has(file))).flat();
      worker.postMessage({ related: [...sharing, ...needed], elsewhere: { uses, siteIds } } satisfies Known);
    });
    const reported = await Promise.all(answers);
    tellUnread(reported.flatMap(({ unread }) => unread));
    const reports = reported.flatMap((answer) => answer.reports);
    const order = new Map(wanted.map((path, index) => [path, index]));
    return [...reports].sort((one, other) => (order.get(one.file) ?? 0) - (order.get(other.file) ?? 0));
  } finally {
    for (const worker of workers) void worker.terminate();
  }
}

function answerOf<Answer extends { readonly kind: string }>(worker: Worker): Promise<Answer> {
  return new Promise((resolve, reject) => {
    worker.once('message', (answer: Answer | Failed) => {
      if (isFailure(answer)) reject(new CallProblem(answer.message));
      else resolve(answer);
    });
    worker.once('error', reject);
  });
}

function isFailure(answer: { readonly kind: string }): answer is Failed {
  return answer.kind === 'failed';
}

/** The files that say one word, for every word that more than one file says. */
function filesSharing(
  words: Told['words'],
  wordsOf: (file: FileWords) => string | readonly string[],
): readonly (readonly string[])[] {
  const said = words.flatMap(([path, file]) => [wordsOf(file)].flat().map((word) => ({ word, path })));
  const filesOfWords = [...groupedBy(said, ({ word }) => word).values()];
  return filesOfWords.map((all) => [...new Set(all.map(({ path }) => path))]).filter(({ length }) => length > 1);
}
