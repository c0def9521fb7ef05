/** Fixes, acceptances, explanations and refactorings as code actions. */
import { CodeAction, CodeActionKind, type CodeActionParams, type Command, Range } from 'vscode-languageserver';
import type { Analysis } from '../../analysis/analysis.ts';
import type { Finding } from '../../analysis/finding.ts';
import { overlaps, type TextRange } from '../../base/text-range.ts';
import { acceptancesAt, type OfferedAcceptance } from '../../features/writing/acceptances.ts';
import { fixesAt, safeEdits } from '../../features/writing/fixes.ts';
import { refactoringsAt } from '../../features/writing/refactorings/refactorings.ts';
import { SHOW_PLACE } from '../client.ts';
import { diagnosticOf, FIX_ALL, stretchIn, workspaceEditOf } from '../protocol.ts';
import type { Served } from '../served.ts';

const REFACTORING_KINDS = { rewrite: CodeActionKind.RefactorRewrite, extract: CodeActionKind.RefactorExtract } as const;

export function serveActions(served: Served): void {
  const { connection, analysisOf } = served;
  connection.onCodeAction(async (params) => {
    const analysis = await analysisOf(params.textDocument.uri);
    if (analysis === undefined) return [];
    const range = stretchIn(analysis.parsed, params.range);
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
function quickFixes({ client, find }: Served, analysis: Analysis, range: TextRange): readonly CodeAction[] {
  const answerTo = (finding: Finding) => ({
    kind: CodeActionKind.QuickFix,
    diagnostics: [diagnosticOf(finding, analysis.parsed, find, client.isOurs)],
  });
  const findings = analysis.findings.filter((finding) => overlaps(finding.range, range));
  const oneOfEachRule = [...new Map(findings.map((finding) => [finding.rule, finding])).values()];
  return [
    ...fixesAt(analysis, range).map(({ finding, fix }) => ({
      title: fix.title,
      ...answerTo(finding),
      edit: workspaceEditOf(fix.edits, find),
      isPreferred: fix.kind === 'safe' && finding.fixes[0] === fix, // what a person would take without thinking
    })),
    ...acceptancesAt(analysis, range).map((offered) => ({
      title: offered.title,
      ...answerTo(offered.finding),
      edit: workspaceEditOf([offered.edit], find),
      ...(client.showsPlaces ? { command: writingReason(analysis, offered) } : {}),
    })),
    ...(client.isOurs ? oneOfEachRule.map((finding) => ({ ...explaining(finding), ...answerTo(finding) })) : []),
  ];
}

/** Selects the words that stand for the reason once the comment is in, to be typed over. */
function writingReason({ file, parsed }: Analysis, { edit, reason }: OfferedAcceptance): Command {
  const { line, character } = parsed.lines.positionAt(edit.range.start);
  const columnOf = (offset: number): number => character + offset - edit.range.start;
  const selected = Range.create(line, columnOf(reason.start), line, columnOf(reason.end));
  return { title: 'Write the reason', command: SHOW_PLACE, arguments: [file, selected] };
}

/** The command is one of the extension. */
function explaining({ rule }: Finding): { readonly title: string; readonly command: Command } {
  const title = `Explain ${rule}`;
  return { title, command: { title, command: 'dewright.explain', arguments: [rule] } };
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
