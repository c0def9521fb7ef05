/**
 * Checks many files on several threads. A tag has to be unique over all files and a model may be used by any site, so
 * it goes in two rounds: first every thread reads its share and tells what it gives and uses, then it checks its share
 * with what the others told. The result is the same as on one thread.
 */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { FileReport, ReportOptions } from './file-report.ts';
import type { FoundFiles } from './find-files.ts';
import { CallProblem } from './problem.ts';

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
  readonly tags: readonly (readonly [tag: string, path: string])[];
  readonly uses: readonly (readonly [kit: string, model: string])[];
}

/** The second question. */
export interface Known {
  /** The files that share a tag with another. */
  readonly sharing: readonly string[];
  /** Absent where only single files were named, so that nothing can be called unused. */
  readonly uses: readonly (readonly [kit: string, model: string])[] | undefined;
}

export interface Reported {
  readonly kind: 'reported';
  readonly reports: readonly FileReport[];
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
    const known: Known = {
      sharing: filesSharingTags(told),
      uses: whole ? told.flatMap(({ uses }) => uses) : undefined,
    };
    const answers = workers.map((worker) => answerOf<Reported>(worker));
    for (const worker of workers) worker.postMessage(known);
    const reports = (await Promise.all(answers)).flatMap((answer) => answer.reports);
    const order = new Map(wanted.map((path, index) => [path, index]));
    return [...reports].sort((one, other) => (order.get(one.file) ?? 0) - (order.get(other.file) ?? 0));
  } finally {
    for (const worker of workers) void worker.terminate();
  }
}

function answerOf<Answer extends { readonly kind: string }>(worker: Worker): Promise<Answer> {
  return new Promise((resolve, reject) => {
    worker.once('message', (answer: Answer | Failed) => {
      if (answer.kind === 'failed') reject(new CallProblem((answer as Failed).message));
      else resolve(answer as Answer);
    });
    worker.once('error', reject);
  });
}

function filesSharingTags(told: readonly Told[]): readonly string[] {
  const first = new Map<string, string>();
  const sharing = new Set<string>();
  for (const [tag, path] of told.flatMap(({ tags }) => tags)) {
    const other = first.get(tag);
    if (other === undefined) first.set(tag, path);
    else if (other !== path) sharing.add(other).add(path);
  }
  return [...sharing];
}
