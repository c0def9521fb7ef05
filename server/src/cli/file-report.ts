/** What `check` says of one file, made where the file is checked: plain data that a worker can hand over. */
import { filePath } from '../analysis/file-location.ts';
import type { Workspace } from '../analysis/workspace.ts';
import { SEVERITIES, type Severity } from '../rules/rule.ts';
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
  readonly counts: Readonly<Record<Severity, number>>;
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
    counts: countsOf(findings.map(({ severity }) => severity)),
    accepted: accepted.length,
  };
}

export function summaryOf(reports: readonly FileReport[]): Summary {
  const counts = { error: 0, warning: 0, information: 0, hint: 0 };
  for (const report of reports) for (const severity of SEVERITIES) counts[severity] += report.counts[severity];
  return {
    files: reports.length,
    points: reports.reduce((sum, { points }) => sum + points, 0),
    counts,
    accepted: reports.reduce((sum, { accepted }) => sum + accepted, 0),
  };
}

/** True where a finding is as severe as the limit or more. */
export function reaches(counts: Summary['counts'], limit: Severity | 'never'): boolean {
  if (limit === 'never') return false;
  return SEVERITIES.slice(0, SEVERITIES.indexOf(limit) + 1).some((severity) => counts[severity] > 0);
}

function countsOf(severities: readonly Severity[]): Record<Severity, number> {
  const counts = { error: 0, warning: 0, information: 0, hint: 0 };
  for (const severity of severities) counts[severity] += 1;
  return counts;
}
