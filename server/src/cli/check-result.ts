/** What `check` found, as data that every format prints. */
import type { Analysis } from '../analysis/analysis.ts';
import { filePath } from '../analysis/file-location.ts';
import type { Finding } from '../analysis/finding.ts';
import type { Workspace } from '../analysis/workspace.ts';
import { SEVERITIES, type Severity } from '../rules/rule.ts';
import { shownPath } from './load.ts';

export interface CheckedFile {
  readonly path: string;
  readonly analysis: Analysis;
  readonly findings: readonly Finding[];
}

export interface CheckResult {
  readonly files: readonly CheckedFile[];
  readonly points: number;
  readonly counts: Readonly<Record<Severity, number>>;
  readonly accepted: number;
  /** The analyses of files that were read besides, for places in them. */
  readonly workspace: Workspace;
}

/** @param only the name of the one rule whose findings are wanted */
export function checkFiles(workspace: Workspace, files: readonly string[], only: string | undefined): CheckResult {
  const checked: CheckedFile[] = [];
  const counts = { error: 0, warning: 0, information: 0, hint: 0 };
  let points = 0;
  let accepted = 0;
  for (const file of files) {
    const analysis = workspace.analysis(file);
    if (analysis === undefined) continue;
    const findings = analysis.findings.filter(({ rule }) => only === undefined || rule === only);
    for (const { severity } of findings) counts[severity] += 1;
    accepted += analysis.accepted.filter(({ rule }) => only === undefined || rule === only).length;
    if (analysis.content.kind === 'site') points += analysis.content.site.model.points.size;
    checked.push({ path: shownPath(filePath(file)), analysis, findings });
  }
  return { files: checked, points, counts, accepted, workspace };
}

/** True where a finding is as severe as the limit or more. */
export function reaches(counts: CheckResult['counts'], limit: Severity | 'never'): boolean {
  if (limit === 'never') return false;
  return SEVERITIES.slice(0, SEVERITIES.indexOf(limit) + 1).some((severity) => counts[severity] > 0);
}
