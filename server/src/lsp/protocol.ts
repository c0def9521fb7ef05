/** Our data in the terms of the protocol. */
import {
  CodeActionKind,
  type Diagnostic,
  DiagnosticSeverity,
  DiagnosticTag,
  type Range,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import type { FileEdit, Finding } from '../analysis/finding.ts';
import type { ParsedFile } from '../analysis/parsed-file.ts';
import type { TextRange } from '../base/text-range.ts';
import type { Severity } from '../rules/rule.ts';

/** Finds any file of the workspace, for places in it. */
export type FileFinder = (file: string) => ParsedFile | undefined;

export const FIX_ALL = `${CodeActionKind.SourceFixAll}.dewright`;

const SEVERITIES: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

const UNNECESSARY = new Set(['unused-definition', 'acceptance-unused']);

export function rangeIn({ lines }: ParsedFile, range: TextRange): Range {
  return { start: lines.positionAt(range.start), end: lines.positionAt(range.end) };
}

/** The stretch of a file's text that a range of the protocol means. */
export function stretchIn({ lines }: ParsedFile, range: Range): TextRange {
  return { start: lines.offsetAt(range.start), end: lines.offsetAt(range.end) };
}

/** The address of a rule's page. The client of this product shows it; other editors show the rule's name alone. */
function rulePageAddress(rule: string): string {
  return `dewright-rule:/${rule}.md`;
}

export function diagnosticOf(finding: Finding, file: ParsedFile, find: FileFinder, withPages: boolean): Diagnostic {
  const related = finding.related.flatMap(({ message, file: other, range }) => {
    const parsed = find(other);
    return parsed === undefined ? [] : [{ message, location: { uri: other, range: rangeIn(parsed, range) } }];
  });
  return {
    source: 'dewright',
    code: finding.rule,
    ...(withPages ? { codeDescription: { href: rulePageAddress(finding.rule) } } : {}),
    severity: SEVERITIES[finding.severity],
    message: finding.message,
    range: rangeIn(file, finding.range),
    ...(related.length === 0 ? {} : { relatedInformation: related }),
    ...(UNNECESSARY.has(finding.rule) ? { tags: [DiagnosticTag.Unnecessary] } : {}),
  };
}

export function workspaceEditOf(edits: readonly FileEdit[], find: FileFinder): WorkspaceEdit {
  const changes: Record<string, { range: Range; newText: string }[]> = {};
  for (const { file, range, newText } of edits) {
    const parsed = find(file);
    if (parsed === undefined) continue;
    changes[file] ??= [];
    changes[file].push({ range: rangeIn(parsed, range), newText });
  }
  return { changes };
}
