/** What `check` says of one file, made where the file is checked: plain data that a worker can hand over. */
import { filePath } from '../analysis/file-location.ts';
import type { Workspace } from '../analysis/workspace.ts';
import type { Severity } from '../rules/rule.ts';
import { countsOf } from './fail-on.ts';
import type { Summary } from './formats/format.ts';
import { FORMATS, type FormatName } from './formats/formats.ts';
import { shownPath } from './load.ts';

export interface ReportOptions {
  readonly format: FormatName;
  readonly colour: boolean;
  /** The one rule whose findings are wanted. */
  readonly only: string | undefined;
}

export interface FileReport {
  /** Its absolute path. */
  readonly file: string;
  readonly text: string;
  readonly points: number;
  /** Of its findings. */
  readonly severities: readonly Severity[];
  readonly accepted: number;
}

/** @param file its URI */
export function reportOf(
  workspace: Workspace,
  file: string,
  { format, colour, only }: ReportOptions,
): FileReport | undefined {
  const analysis = workspace.analysis(file);
  if (analysis === undefined) return undefined;
  const wanted = ({ rule }: { readonly rule: string }): boolean => only === undefined || rule === only;
  const findings = analysis.findings.filter(wanted);
  const accepted = analysis.accepted.filter(wanted);
  const path = shownPath(filePath(file));
  const context = { colour, fileNamed: (other: string) => workspace.parsed(other) };
  return {
    file: filePath(file),
    text: FORMATS[format].ofFile({ path, analysis, findings, accepted }, context),
    points: analysis.content.kind === 'site' ? analysis.content.site.model.points.size : 0,
    severities: findings.map(({ severity }) => severity),
    accepted: accepted.length,
  };
}

export function summaryOf(reports: readonly FileReport[]): Summary {
  return {
    files: reports.length,
    points: reports.reduce((sum, { points }) => sum + points, 0),
    counts: countsOf(reports.flatMap(({ severities }) => severities)),
    accepted: reports.reduce((sum, { accepted }) => sum + accepted, 0),
  };
}
