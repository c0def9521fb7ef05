/** The language server: requests in, plain data from the features out. */
import {
  CodeAction,
  CodeActionKind,
  type Connection,
  DidChangeWatchedFilesNotification,
  DocumentDiagnosticReportKind,
  FileChangeType,
  type InitializeParams,
  type InitializeResult,
  TextDocumentSyncKind,
  TextDocuments,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Analysis } from '../analysis/analysis.ts';
import { explain, explainedNames } from '../features/explain.ts';
import { fixesAt, safeEdits } from '../features/fixes.ts';
import { hoverAt } from '../features/hover.ts';
import { accessThroughClient, type FileAccess } from './file-access.ts';
import { Library } from './library.ts';
import { codeActionOf, diagnosticOf, FIX_ALL, rangeIn, workspaceEditOf } from './protocol.ts';

/** @param otherAccess file access where the client does not read files for the server; gets the workspace folders */
export function startServer(connection: Connection, otherAccess: (folders: readonly string[]) => FileAccess): void {
  connection.onInitialize((params) => {
    const client = clientOf(params);
    const folders = params.workspaceFolders?.map(({ uri }) => uri) ?? (params.rootUri === null ? [] : [params.rootUri]);
    const access = client.readsFiles ? accessThroughClient(connection) : otherAccess(folders);
    serve(connection, client, new Library(access));
    return capabilities(client);
  });
  connection.listen();
}

interface Client {
  readonly readsFiles: boolean;
  readonly pullsDiagnostics: boolean;
  readonly refreshesDiagnostics: boolean;
  readonly watchesFiles: boolean;
}

function clientOf({ capabilities: { textDocument, workspace }, initializationOptions }: InitializeParams): Client {
  return {
    readsFiles: initializationOptions?.files === 'client',
    pullsDiagnostics: textDocument?.diagnostic !== undefined,
    refreshesDiagnostics: workspace?.diagnostics?.refreshSupport === true,
    watchesFiles: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
  };
}

function capabilities({ pullsDiagnostics }: Client): InitializeResult {
  return {
    serverInfo: { name: 'dewright' },
    capabilities: {
      textDocumentSync: TextDocumentSyncKind.Incremental,
      hoverProvider: true,
      codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, FIX_ALL] },
      ...(pullsDiagnostics ? { diagnosticProvider: { interFileDependencies: true, workspaceDiagnostics: false } } : {}),
    },
  };
}

const LAST_CHANGE_FIRST = 10;

function serve(connection: Connection, client: Client, library: Library): void {
  const documents = new TextDocuments(TextDocument);
  const { workspace } = library;
  const find = (file: string) => workspace.parsed(file);
  const diagnosticsOf = ({ findings, parsed }: Analysis) =>
    findings.map((finding) => diagnosticOf(finding, parsed, find, client.readsFiles));
  const analysisOf = async (uri: string): Promise<Analysis | undefined> => {
    await library.readKitsOf(uri);
    return workspace.analysis(uri);
  };

  let waiting: NodeJS.Timeout | undefined;
  /** Another file has changed: what the editor shows of the open ones may be stale. */
  const refresh = (): void => {
    if (client.pullsDiagnostics) {
      if (client.refreshesDiagnostics) void connection.languages.diagnostics.refresh();
      return;
    }
    clearTimeout(waiting);
    waiting = setTimeout(() => {
      for (const { uri } of documents.all()) void push(uri);
    }, LAST_CHANGE_FIRST);
  };
  const push = async (uri: string): Promise<void> => {
    const analysis = await analysisOf(uri);
    const version = documents.get(uri)?.version;
    if (analysis === undefined || version === undefined) return;
    await connection.sendDiagnostics({ uri, version, diagnostics: diagnosticsOf(analysis) });
  };

  documents.onDidChangeContent(({ document }) => {
    library.opened(document.uri, document.getText());
    refreshOthers(document.uri);
  });
  documents.onDidClose(async ({ document }) => {
    await library.closed(document.uri);
    if (!client.pullsDiagnostics) await connection.sendDiagnostics({ uri: document.uri, diagnostics: [] });
    refresh();
  });
  /** The editor asks again for the file that was typed in by itself; the others only when told. */
  const refreshOthers = (uri: string): void => {
    const others = documents.all().some((other) => other.uri !== uri);
    if (others || !client.pullsDiagnostics) refresh();
  };

  connection.onInitialized(async () => {
    if (client.watchesFiles && !client.readsFiles) {
      const watchers = [{ globPattern: '**/*.{dewsite,dewkit,dewvisit}.yaml' }];
      await connection.client.register(DidChangeWatchedFilesNotification.type, { watchers });
    }
    await library.readAll();
    refresh();
  });
  connection.onDidChangeWatchedFiles(async ({ changes }) => {
    for (const { uri, type } of changes) {
      if (type === FileChangeType.Deleted && documents.get(uri) === undefined) workspace.remove(uri);
      else await library.changedOnDisk(uri);
    }
    refresh();
  });
  connection.languages.diagnostics.on(async ({ textDocument }) => {
    const analysis = await analysisOf(textDocument.uri);
    return { kind: DocumentDiagnosticReportKind.Full, items: analysis === undefined ? [] : diagnosticsOf(analysis) };
  });
  connection.onHover(async ({ textDocument, position }) => {
    const analysis = await analysisOf(textDocument.uri);
    const hover = analysis === undefined ? undefined : hoverAt(analysis, analysis.parsed.lines.offsetAt(position));
    if (analysis === undefined || hover === undefined) return null;
    return { contents: { kind: 'markdown', value: hover.markdown }, range: rangeIn(analysis.parsed, hover.range) };
  });
  connection.onCodeAction(async ({ textDocument, range, context }) => {
    const analysis = await analysisOf(textDocument.uri);
    if (analysis === undefined) return [];
    const wants = (kind: string): boolean =>
      context.only?.some((only) => kind === only || kind.startsWith(`${only}.`)) ?? true;
    const actions: CodeAction[] = [];
    const { lines } = analysis.parsed;
    if (wants(CodeActionKind.QuickFix)) {
      const span = { start: lines.offsetAt(range.start), end: lines.offsetAt(range.end) };
      for (const offered of fixesAt(analysis, span)) {
        const diagnostic = diagnosticOf(offered.finding, analysis.parsed, find, client.readsFiles);
        actions.push(codeActionOf(offered, diagnostic, workspaceEditOf(offered.fix.edits, find)));
      }
    }
    if (context.only !== undefined && wants(FIX_ALL)) {
      const edits = safeEdits(analysis);
      if (edits.length > 0)
        actions.push(CodeAction.create('Apply all safe fixes', workspaceEditOf(edits, find), FIX_ALL));
    }
    return actions;
  });
  connection.onRequest('dewright/explain', ({ name }: { readonly name: string }) => {
    const markdown = explain(String(name));
    return markdown === undefined ? null : { markdown };
  });
  connection.onRequest('dewright/explainNames', () => explainedNames().rules);
  documents.listen(connection);
}
