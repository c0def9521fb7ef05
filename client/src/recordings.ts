/**
 * Has recordings read for the server, in a process of its own. What reads them is native code that the workspace may
 * bring along, so nothing is started in a workspace that is not trusted.
 */
import { type CancellationToken, type Disposable, l10n, RelativePattern, Uri, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { RecordingAnswer } from '../../server/src/evaluate/recorded/answer.ts';
import type { RecordingQuestion } from '../../server/src/lsp/recording-reader.ts';
import { readInProcess } from '../../server/src/recording/reader-process.ts';
import { mayBeRead, requestedFile } from './read-file.ts';
import { HAS_NODE } from './run-server.ts';

/** The program that reads recordings, in the folder of the extension. */
const PROGRAM = 'server/dist/recording.js';

const FOLDER_SETTING = 'dewright.recordings.duckdbFolder';

export function answerRecordingRequests(client: BaseLanguageClient, extension: Uri): Disposable[] {
  const watched = new Map<string, Disposable>();
  const tellChanged = (log?: string): void => tell(client, 'dewright/recordingChanged', { log });
  const watch = (log: Uri): void => {
    const name = log.toString();
    if (watched.has(name)) return;
    const file = new RelativePattern(Uri.joinPath(log, '..'), log.path.split('/').at(-1) ?? '');
    const watcher = workspace.createFileSystemWatcher(file);
    const changed = (): void => tellChanged(name);
    watched.set(name, watcher);
    for (const event of [watcher.onDidChange, watcher.onDidCreate, watcher.onDidDelete]) event(changed);
  };
  const answer = async (question: RecordingQuestion, token: CancellationToken): Promise<RecordingAnswer> => {
    const log = requestedFile(question.log);
    const sentence = whyNotRead(log);
    if (sentence !== undefined) return { kind: 'problem', sentence };
    watch(log);
    return read(client, extension, log, question, token);
  };
  return [
    client.onRequest<RecordingAnswer, void>('dewright/readRecording', answer),
    workspace.onDidGrantWorkspaceTrust(() => tellChanged()),
    workspace.onDidChangeConfiguration((change) => {
      if (change.affectsConfiguration(FOLDER_SETTING)) tellChanged();
    }),
    {
      dispose() {
        for (const watcher of watched.values()) watcher.dispose();
      },
    },
  ];
}

/** Nothing while the server is restarting: it asks for its recordings anew. */
function tell(client: BaseLanguageClient, method: string, params: object): void {
  if (client.isRunning()) void client.sendNotification(method, params);
}

function whyNotRead(log: Uri): string | undefined {
  if (!HAS_NODE)
    return l10n.t('Recordings are read where the editor runs on a computer, and this one runs in a browser.');
  if (log.scheme !== 'file') return l10n.t('Recordings are read from a disk, and this workspace is not on one.');
  if (!mayBeRead(log)) return l10n.t('Recordings outside the workspace are not read.');
  if (workspace.isTrusted) return undefined;
  return l10n.t('Recordings are read by native code, which is not started in a workspace that is not trusted.');
}

function read(
  client: BaseLanguageClient,
  extension: Uri,
  log: Uri,
  { columns, basis }: RecordingQuestion,
  token: CancellationToken,
): Promise<RecordingAnswer> {
  const cancelling = new AbortController();
  token.onCancellationRequested(() => cancelling.abort());
  return readInProcess(
    { path: log.fsPath, columns, basis, trustDetection: false, duckdbFolders: duckdbFolders() },
    {
      program: Uri.joinPath(extension, PROGRAM).fsPath,
      onProgress: (share) => tell(client, 'dewright/recordingProgress', { share }),
      signal: cancelling.signal,
    },
  );
}

/** The folder of the setting, then the folders of the workspace. */
function duckdbFolders(): readonly string[] {
  const given = workspace.getConfiguration().get<string>(FOLDER_SETTING, '');
  const folders = (workspace.workspaceFolders ?? []).filter(({ uri }) => uri.scheme === 'file');
  return [...(given === '' ? [] : [given]), ...folders.map(({ uri }) => uri.fsPath)];
}
