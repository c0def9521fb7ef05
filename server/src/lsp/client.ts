/** What the editor at the other end can do, and what is offered to it for that. */
import {
  CodeActionKind,
  type InitializeParams,
  type InitializeResult,
  TextDocumentSyncKind,
} from 'vscode-languageserver';
import { FIX_ALL } from './protocol.ts';
import { TOKEN_LEGEND } from './requests/semantic-token-data.ts';

export interface Client {
  /** It reads files for the server and shows the pages of rules: the extension of this product. */
  readonly isOurs: boolean;
  readonly pullsDiagnostics: boolean;
  readonly refreshesDiagnostics: boolean;
  readonly watchesFiles: boolean;
  readonly takesSnippets: boolean;
  readonly tellsSettings: boolean;
  readonly registersSettings: boolean;
  readonly refreshesHints: boolean;
  readonly refreshesLenses: boolean;
  readonly showsPlaces: boolean;
}

/** Moves the cursor to a place; lenses and acceptances ask for it. */
export const SHOW_PLACE = 'dewright.showPlace';

export function clientOf({ capabilities, initializationOptions }: InitializeParams): Client {
  const { textDocument, workspace, window } = capabilities;
  return {
    isOurs: initializationOptions?.files === 'client',
    pullsDiagnostics: textDocument?.diagnostic !== undefined,
    refreshesDiagnostics: workspace?.diagnostics?.refreshSupport === true,
    watchesFiles: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    takesSnippets: textDocument?.completion?.completionItem?.snippetSupport === true,
    tellsSettings: workspace?.configuration === true,
    registersSettings: workspace?.didChangeConfiguration?.dynamicRegistration === true,
    refreshesHints: workspace?.inlayHint?.refreshSupport === true,
    refreshesLenses: workspace?.codeLens?.refreshSupport === true,
    showsPlaces: window?.showDocument?.support === true,
  };
}

const MOVED_FILES = [
  { pattern: { glob: '**/*.{dewsite,dewkit,dewvisit}.yaml', matches: 'file' as const } },
  { pattern: { glob: '**/*.{csv,parquet}', matches: 'file' as const } },
  { pattern: { glob: '**', matches: 'folder' as const } },
];

export function capabilitiesFor({ pullsDiagnostics, showsPlaces }: Client): InitializeResult {
  return {
    serverInfo: { name: 'dewright' },
    capabilities: {
      textDocumentSync: TextDocumentSyncKind.Incremental,
      hoverProvider: true,
      completionProvider: { triggerCharacters: [' ', '{', '['] },
      definitionProvider: true,
      referencesProvider: true,
      documentHighlightProvider: true,
      renameProvider: { prepareProvider: true },
      documentLinkProvider: {},
      documentSymbolProvider: true,
      workspaceSymbolProvider: true,
      foldingRangeProvider: true,
      selectionRangeProvider: true,
      semanticTokensProvider: { legend: TOKEN_LEGEND, full: true, range: true },
      inlayHintProvider: { resolveProvider: true },
      codeLensProvider: {},
      codeActionProvider: {
        codeActionKinds: [
          CodeActionKind.QuickFix,
          CodeActionKind.RefactorRewrite,
          CodeActionKind.RefactorExtract,
          FIX_ALL,
        ],
      },
      ...(showsPlaces ? { executeCommandProvider: { commands: [SHOW_PLACE] } } : {}),
      ...(pullsDiagnostics ? { diagnosticProvider: { interFileDependencies: true, workspaceDiagnostics: true } } : {}),
      workspace: { fileOperations: { willRename: { filters: MOVED_FILES } } },
    },
  };
}
