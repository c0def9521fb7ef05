/** Fixes, acceptances, explanations and refactorings as code actions. */
import { CodeAction, CodeActionKind, type CodeActionParams, Range } from 'vscode-languageserver';
import type { Analysis } from '../analysis/analysis.ts';
import type { Finding } from '../analysis/finding.ts';
import { overlaps, type TextRange } from '../base/text-range.ts';
import { acceptancesAt, type OfferedAcceptance } from '../features/acceptances.ts';
import { fixesAt, safeEdits } from '../features/fixes.ts';
import { refactoringsAt } from '../features/refactorings/refactorings.ts';
import { SHOW_PLACE } from './client.ts';
import { codeActionOf, diagnosticOf, FIX_ALL, workspaceEditOf } from './protocol.ts';
import type { Served } from './served.ts';

const REFACTORING_KINDS = { rewrite: CodeActionKind.RefactorRewrite, extract: CodeActionKind.RefactorExtract } as const;

export function serveActions(served: Served): void {
  const { connection, analysisOf } = served;
  connection.onCodeAction(async (params) => {
    const analysis = await analysisOf(params.textDocument.uri);
    if (analysis === undefined) return [];
    const { lines } = analysis.parsed;
    const range = { start: lines.offsetAt(params.range.start), end: lines.offsetAt(params.range.end) };
    return [
      ...(wants(params, CodeActionKind.QuickFix) ? quickFixes(served, analysis, range) : []),
      ...refactorings(served, analysis, range.start).filter(({ kind }) => wants(params, kind ?? '')),
      ...(params.context.only !== undefined && wants(params, FIX_ALL) ? fixAll(served, analysis) : []),
    ];
  });
}

function wants({ context }: CodeActionParams, kind: string): boolean {
  return context.only?.some((only) => kind === only || kind.startsWith(`${only}.`)) ?? true;
}

/** The fixes first, then what to do where the finding stands. */
function quickFixes(served: Served, analysis: Analysis, range: TextRange): readonly CodeAction[] {
  const { client, find } = served;
  const diagnosed = (finding: Finding) => diagnosticOf(finding, analysis.parsed, find, client.isOurs);
  const findings = analysis.findings.filter((finding) => overlaps(finding.range, range));
  const oneOfEachRule = new Map(findings.map((finding) => [finding.rule, finding])).values();
  return [
    ...fixesAt(analysis, range).map((offered) =>
      codeActionOf(offered, diagnosed(offered.finding), workspaceEditOf(offered.fix.edits, find)),
    ),
    ...acceptancesAt(analysis, range).map((offered) =>
      acceptance(served, analysis, offered, diagnosed(offered.finding)),
    ),
    ...(client.isOurs ? [...oneOfEachRule].map((finding) => explanation(finding, diagnosed(finding))) : []),
  ];
}

/** Inserts the comment and selects the words that stand for the reason, to be typed over. */
function acceptance(
  { client, find }: Served,
  { file, parsed }: Analysis,
  { title, edit, reason }: OfferedAcceptance,
  diagnostic: ReturnType<typeof diagnosticOf>,
): CodeAction {
  const action = CodeAction.create(title, workspaceEditOf([edit], find), CodeActionKind.QuickFix);
  const { line, character } = parsed.lines.positionAt(edit.range.start);
  const selected = Range.create(
    line,
    character + reason.start - edit.range.start,
    line,
    character + reason.end - edit.range.start,
  );
  action.diagnostics = [diagnostic];
  if (client.showsPlaces)
    action.command = { title: 'Write the reason', command: SHOW_PLACE, arguments: [file, selected] };
  return action;
}

/** The command is one of the extension. */
function explanation({ rule }: Finding, diagnostic: ReturnType<typeof diagnosticOf>): CodeAction {
  const title = `Explain ${rule}`;
  const action = CodeAction.create(
    title,
    { title, command: 'dewright.explain', arguments: [rule] },
    CodeActionKind.QuickFix,
  );
  action.diagnostics = [diagnostic];
  return action;
}

function refactorings({ workspace, find }: Served, analysis: Analysis, offset: number): readonly CodeAction[] {
  return refactoringsAt(workspace, analysis, offset).map(({ title, kind, edits }) =>
    CodeAction.create(title, workspaceEditOf(edits, find), REFACTORING_KINDS[kind]),
  );
}

function fixAll({ find }: Served, analysis: Analysis): readonly CodeAction[] {
  const edits = safeEdits(analysis);
  return edits.length === 0 ? [] : [CodeAction.create('Apply all safe fixes', workspaceEditOf(edits, find), FIX_ALL)];
}
