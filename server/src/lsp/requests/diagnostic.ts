/** Diagnostics, pulled by the editor or pushed to it, and word to it that what it shows has become stale. */
import {
  CodeLensRefreshRequest,
  DocumentDiagnosticReportKind,
  type TextDocuments,
  type WorkspaceDocumentDiagnosticReport,
} from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { Analysis } from '../../analysis/analysis.ts';
import { afterPause } from '../after-pause.ts';
import { nextTurn } from '../next-turn.ts';
import { diagnosticOf } from '../protocol.ts';
import type { Served } from '../served.ts';

export interface Diagnostics {
  /** A file was typed in: the editor asks again for it by itself, and for the others only when told. */
  typedIn(uri: string): void;
  closed(uri: string): Promise<void>;
  /** Another file than the one shown has changed, or the settings have. */
  refresh(): void;
  /** For good. */
  stop(): void;
}

/** ms */
const FINDINGS_AFTER = 10;
const HINTS_AFTER = 300;

export function serveDiagnostics(served: Served, documents: TextDocuments<TextDocument>): Diagnostics {
  const { connection, client, find, analysisOf, workspace, tell } = served;
  const diagnosticsOf = ({ findings, parsed }: Analysis) =>
    findings.map((finding) => diagnosticOf(finding, parsed, find, client.isOurs));
  const push = async (uri: string): Promise<void> => {
    const analysis = await analysisOf(uri);
    const version = documents.get(uri)?.version;
    if (analysis === undefined || version === undefined) return;
    await connection.sendDiagnostics({ uri, version, diagnostics: diagnosticsOf(analysis) });
  };
  const pushOrRefresh = async (): Promise<void> => {
    if (!client.pullsDiagnostics) await Promise.all(documents.all().map(({ uri }) => push(uri)));
    else if (client.refreshesDiagnostics) await connection.languages.diagnostics.refresh();
  };
  const findings = afterPause(FINDINGS_AFTER, pushOrRefresh, tell);
  const refreshHints = () =>
    Promise.all([
      client.refreshesHints && connection.languages.inlayHint.refresh(),
      client.refreshesLenses && connection.sendRequest(CodeLensRefreshRequest.type),
    ]);
  const hints = afterPause(HINTS_AFTER, refreshHints, tell);
  const refresh = (): void => {
    hints.start();
    findings.start();
  };
  connection.languages.diagnostics.on(async ({ textDocument, previousResultId }) => {
    const analysis = await analysisOf(textDocument.uri);
    const resultId = workspace.stateOf(textDocument.uri);
    if (previousResultId === resultId) return { kind: DocumentDiagnosticReportKind.Unchanged, resultId };
    const items = analysis === undefined ? [] : diagnosticsOf(analysis);
    return { kind: DocumentDiagnosticReportKind.Full, resultId, items };
  });
  /** The files that are not open, one after another; what the editor asks meanwhile is answered in between. */
  connection.languages.diagnostics.onWorkspace(async ({ previousResultIds }, token, _progress, partial) => {
    const before = new Map(previousResultIds.map(({ uri, value }) => [uri, value]));
    const items: WorkspaceDocumentDiagnosticReport[] = [];
    for (const uri of new Set([...workspace.files(), ...before.keys()])) {
      if (token.isCancellationRequested) break;
      const isOpen = documents.get(uri) !== undefined;
      if (isOpen || before.get(uri) === workspace.stateOf(uri)) continue;
      const analysis = await analysisOf(uri);
      const resultId = workspace.stateOf(uri);
      const found = analysis === undefined ? [] : diagnosticsOf(analysis);
      workspace.release(uri);
      const kind = DocumentDiagnosticReportKind.Full;
      const report: WorkspaceDocumentDiagnosticReport = { kind, uri, version: null, resultId, items: found };
      if (partial === undefined) items.push(report);
      else partial.report({ items: [report] });
      await nextTurn();
    }
    return { items };
  });
  return {
    refresh,
    stop() {
      hints.stop();
      findings.stop();
    },
    typedIn(uri) {
      const others = documents.all().some((other) => other.uri !== uri);
      if (others || !client.pullsDiagnostics) refresh();
    },
    async closed(uri) {
      if (!client.pullsDiagnostics) await connection.sendDiagnostics({ uri, diagnostics: [] });
      refresh();
    },
  };
}
