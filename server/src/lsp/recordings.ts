/** Keeps the recordings of open visits read, one after another, while the editor goes on. */
import { type CancellationToken, CancellationTokenSource } from 'vscode-languageserver';
import { baseName, resolveFile } from '../analysis/file-location.ts';
import type { ReadRecording } from '../evaluate/recorded/visited-recording.ts';
import { afterPause } from './after-pause.ts';
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
/** ms: what is read sooner needs no progress. */
const PROGRESS_AFTER = 700;

interface Reading {
  readonly visit: string;
  readonly key: string;
  readonly cancelling: CancellationTokenSource;
  /** Another recording is wanted now, or the log has changed: what it answers is not kept. */
  isOutdated: boolean;
}

/** @param openFiles URIs of the open documents @param refresh tells the editor that findings have changed */
export function serveRecordings(
  { connection, workspace, analysisOf, tell }: Served,
  read: RecordingReader,
  openFiles: () => readonly string[],
  refresh: () => void,
): Recordings {
  let reading: Reading | undefined;
  let isStopped = false;

  /** The first recording of an open visit that was not read yet. */
  async function nextUnread(): Promise<{ readonly visit: string; readonly recording: ReadRecording } | undefined> {
    for (const visit of openFiles()) {
      if (workspace.recordingOf(visit) !== undefined) await analysisOf(visit); // with the kits of its site
      const recording = workspace.recordingOf(visit);
      if (recording !== undefined && recording.answer === undefined) return { visit, recording };
    }
    return undefined;
  }

  async function look(): Promise<void> {
    const next = await nextUnread();
    if (reading !== undefined) {
      const isWanted = next?.visit === reading.visit && next.recording.key === reading.key;
      if (!isWanted) giveUp(reading);
      return; // what is wanted now is looked for when the reading has ended
    }
    if (next === undefined || isStopped) return;
    const { visit, recording } = next;
    const { key, columns, basis, log } = recording;
    const current: Reading = { visit, key, cancelling: new CancellationTokenSource(), isOutdated: false };
    reading = current;
    const question = { log: resolveFile(visit, log.value), columns, basis };
    const progress = showProgress(baseName(question.log), current.cancelling);
    const answer = await read(question, progress.report, current.cancelling.token);
    progress.done();
    reading = undefined;
    if (!current.isOutdated) {
      workspace.setRecording(visit, { key, answer });
      refresh();
    }
    await look();
  }

  /** In the editor's way, and with its way to cancel. */
  function showProgress(name: string, cancelling: CancellationTokenSource) {
    let report: (share: number) => void = () => undefined;
    let end = (): void => undefined;
    let ended = false;
    const start = async (): Promise<void> => {
      const shown = await connection.window.createWorkDoneProgress();
      if (ended) return shown.done();
      shown.begin(`Reading ${name}`, 0, undefined, true);
      cancelOn(shown.token, cancelling);
      report = (share) => shown.report(Math.round(share * 100));
      end = () => shown.done();
    };
    const timer = setTimeout(() => void start().catch(() => undefined), PROGRESS_AFTER);
    return {
      report: (share: number) => report(share),
      done() {
        ended = true;
        clearTimeout(timer);
        end();
      },
    };
  }

  const looking = afterPause(AFTER_TYPING, look, tell);
  /** A log was written to, or what kept logs from being read has changed. */
  connection.onNotification('dewright/recordingChanged', ({ log }: { readonly log?: string }) => {
    for (const visit of workspace.files('visit')) {
      const recording = workspace.recordingOf(visit);
      if (recording === undefined) continue;
      if (log !== undefined && resolveFile(visit, recording.log.value) !== log) continue;
      workspace.forgetRecording(visit);
      if (reading?.visit === visit) giveUp(reading);
    }
    looking.start();
  });
  return {
    changed: looking.start,
    stop() {
      isStopped = true;
      looking.stop();
      reading?.cancelling.cancel();
    },
  };
}

function giveUp(reading: Reading): void {
  reading.isOutdated = true;
  reading.cancelling.cancel();
}

function cancelOn(token: CancellationToken, cancelling: CancellationTokenSource): void {
  token.onCancellationRequested(() => cancelling.cancel());
}
