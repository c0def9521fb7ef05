/** The language server: requests in, plain data from the features out. */
import { type Connection, DidChangeWatchedFilesNotification, TextDocuments } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { version } from '../../../package.json';
import { InternalError, internalErrorWords } from '../base/internal-error.ts';
import { type Client, capabilitiesFor, clientOf } from './client.ts';
import { accessThroughClient, type FileAccess } from './file-access.ts';
import { Library } from './library.ts';
import { READS_NO_RECORDINGS, type RecordingReader, readerThroughClient } from './recording-reader.ts';
import { serveRecordings } from './recordings.ts';
import { serveActions } from './requests/action.ts';
import { serveCompletion } from './requests/completion.ts';
import { serveDiagnostics } from './requests/diagnostic.ts';
import { serveExtension } from './requests/extension.ts';
import { serveHints } from './requests/hint.ts';
import { serveHovers } from './requests/hover.ts';
import { serveNavigation } from './requests/navigation.ts';
import { servePack } from './requests/pack.ts';
import { serveStructure } from './requests/structure.ts';
import { serveViews } from './requests/view.ts';
import type { Served } from './served.ts';
import { readSettings } from './settings.ts';

/**
 * @param otherAccess file access where the client does not read files for the server; gets the workspace folders
 * @param otherReader reads recordings where the client does not; gets the same
 */
export function startServer(
  connection: Connection,
  otherAccess: (folders: readonly string[]) => FileAccess,
  otherReader: (folders: readonly string[]) => RecordingReader = () => READS_NO_RECORDINGS,
): void {
  connection.onInitialize((params) => {
    const client = clientOf(params);
    const folders = params.workspaceFolders?.map(({ uri }) => uri) ?? (params.rootUri === null ? [] : [params.rootUri]);
    const access = client.isOurs ? accessThroughClient(connection) : otherAccess(folders);
    const reader = client.isOurs ? readerThroughClient(connection) : otherReader(folders);
    serve(connection, client, new Library(access), reader);
    return capabilitiesFor(client);
  });
  connection.listen();
}

function serve(connection: Connection, client: Client, library: Library, reader: RecordingReader): void {
  const { workspace } = library;
  const documents = new TextDocuments(TextDocument);
  const served: Served = {
    connection,
    client,
    workspace,
    find: (file) => workspace.parsed(file),
    tell(error) {
      if (error instanceof InternalError) connection.console.error(internalErrorWords(error, version, true));
    },
    async analysisOf(uri) {
      await library.readKitsOf(uri);
      return workspace.analysis(uri);
    },
  };
  const diagnostics = serveDiagnostics(served, documents);
  const settings = readSettings(served, diagnostics.refresh);
  const openFiles = (): readonly string[] => documents.all().map(({ uri }) => uri);
  const recordings = serveRecordings(served, reader, openFiles, diagnostics.refresh);

  documents.onDidChangeContent(({ document }) => {
    library.opened(document.uri, document.getText());
    diagnostics.typedIn(document.uri);
    recordings.changed();
  });
  documents.onDidClose(async ({ document }) => {
    settings.forget(document.uri);
    await library.closed(document.uri);
    await diagnostics.closed(document.uri);
    recordings.changed();
  });
  const watchFiles = async (): Promise<void> => {
    if (!client.watchesFiles || client.isOurs) return;
    const watchers = [{ globPattern: '**/*.{dewsite,dewkit,dewvisit}.yaml' }];
    await connection.client.register(DidChangeWatchedFilesNotification.type, { watchers });
  };
  const lookAgain = (): void => {
    diagnostics.refresh();
    recordings.changed();
  };
  connection.onInitialized(async () => {
    await Promise.all([watchFiles(), settings.watch(), library.readAll().then(lookAgain)]);
  });
  connection.onDidChangeWatchedFiles(({ changes }) =>
    library.changedOnDisk(changes.map(({ uri }) => uri)).then(lookAgain),
  );

  connection.onShutdown(() => {
    diagnostics.stop();
    recordings.stop();
  });

  serveActions(served);
  serveCompletion(served);
  serveExtension(served);
  serveHints(served, settings);
  serveHovers(served);
  serveNavigation(served);
  servePack(served);
  serveStructure(served);
  serveViews(served, (uri) => documents.get(uri) !== undefined);
  documents.listen(connection);
}
