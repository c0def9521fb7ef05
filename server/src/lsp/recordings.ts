/** Keeps the recordings of open visits read, one after another, while the editor goes on. */
import { CancellationTokenSource } from 'vscode-languageserver';
import { baseName, resolveFile } from '../analysis/file-location.ts';
import type { ReadRecording } from '../evaluate/recorded/visited-recording.ts';
import { type AfterPause, afterPause } from './after-pause.ts';
import { showProgress } from './reading-progress.ts';
import type { RecordingReader } from './recording-reader.ts';
import type { Served } from './served.ts';

export interface Recordings {
  /** A file was opened, closed or typed in, or another one has changed. */
  changed(): void;
  /** For good. */
  stop(): void;
}

/** ms: while somebody types in an envelope, what is laid against it changes with every letter. */
const AFTER_TYPING = 800;

/** @param openFiles URIs of the open documents @param refresh tells the editor that findings have changed */
export function serveRecordings(
  served: Served,
  read: RecordingReader,
  openFiles: () => readonly string[],
  refresh: () => void,
): Recordings {
  const recordings = new OpenRecordings(served, read, openFiles, refresh);
  /** A log was written to, or what kept logs from being read has changed. */
  served.connection.onNotification('dewright/recordingChanged', ({ log }: { readonly log?: string }) =>
    recordings.logChanged(log),
  );
  return recordings;
}

interface Reading {
  readonly visit: string;
  readonly key: string;
  readonly cancelling: CancellationTokenSource;
  /** Another recording is wanted now, or the log has changed: what it answers is not kept. */
  isOutdated: boolean;
}

class OpenRecordings implements Recordings {
  readonly #served: Served;
  readonly #read: RecordingReader;
  readonly #openFiles: () => readonly string[];
  readonly #refresh: () => void;
  readonly #looking: AfterPause;
  #reading: Reading | undefined;
  #isStopped = false;

  constructor(served: Served, read: RecordingReader, openFiles: () => readonly string[], refresh: () => void) {
    this.#served = served;
    this.#read = read;
    this.#openFiles = openFiles;
    this.#refresh = refresh;
    this.#looking = afterPause(AFTER_TYPING, () => this.#look(), served.tell);
  }

  changed(): void {
    this.#looking.start();
  }

  stop(): void {
    this.#isStopped = true;
    this.#looking.stop();
    this.#reading?.cancelling.cancel();
  }

  /** @param log undefined where any may have changed */
  logChanged(log: string | undefined): void {
    const { workspace } = this.#served;
    for (const visit of workspace.files('visit')) {
      const recording = workspace.recordingOf(visit);
      if (recording === undefined) continue;
      if (log !== undefined && resolveFile(visit, recording.log.value) !== log) continue;
      workspace.forgetRecording(visit);
      if (this.#reading?.visit === visit) giveUp(this.#reading);
    }
    this.#looking.start();
  }

  async #look(): Promise<void> {
    const next = await this.#nextUnread();
    const reading = this.#reading;
    if (reading !== undefined) {
      const isWanted = next?.visit === reading.visit && next.recording.key === reading.key;
      if (!isWanted) giveUp(reading);
      return; // what is wanted now is looked for when the reading has ended
    }
    if (next === undefined || this.#isStopped) return;
    await this.#readOne(next);
    await this.#look();
  }

  async #readOne({ visit, recording }: Unread): Promise<void> {
    const { connection, workspace } = this.#served;
    const { key, columns, basis, log } = recording;
    const current: Reading = { visit, key, cancelling: new CancellationTokenSource(), isOutdated: false };
    this.#reading = current;
    const question = { log: resolveFile(visit, log.value), columns, basis };
    const progress = showProgress(connection, baseName(question.log), current.cancelling);
    const answer = await this.#read(question, progress.report, current.cancelling.token);
    progress.done();
    this.#reading = undefined;
    if (current.isOutdated) return;
    workspace.setRecording(visit, { key, answer });
    this.#refresh();
  }

  /** The first recording of an open visit that was not read yet. */
  async #nextUnread(): Promise<Unread | undefined> {
    const { workspace, analysisOf } = this.#served;
    for (const visit of this.#openFiles()) {
      if (workspace.recordingOf(visit) !== undefined) await analysisOf(visit); // with the kits of its site
      const recording = workspace.recordingOf(visit);
      if (recording !== undefined && recording.answer === undefined) return { visit, recording };
    }
    return undefined;
  }
}

interface Unread {
  readonly visit: string;
  readonly recording: ReadRecording;
}

function giveUp(reading: Reading): void {
  reading.isOutdated = true;
  reading.cancelling.cancel();
}
