/** The findings for a person at a terminal. */
import { filePath } from '../../analysis/file-location.ts';
import type { Finding } from '../../analysis/finding.ts';
import { counted } from '../../base/words.ts';
import { SEVERITIES, type Severity } from '../../rules/rule.ts';
import { shownPath } from '../load.ts';
import { type Colours, coloursFor } from '../terminal.ts';
import type { CheckedFile, Format, FormatContext, Summary } from './format.ts';

export const text: Format = {
  ofFile: (file, context) => {
    if (file.findings.length === 0) return '';
    const colours = coloursFor(context.colour);
    const lines = file.findings.flatMap((finding) => findingLines(finding, file, context, colours));
    return [colours.strong(printable(file.path)), ...lines, ''].join('\n');
  },
  ofAll: (files, summary) => [...files, summaryLine(summary)].join('\n'),
};

function findingLines(
  finding: Finding,
  file: CheckedFile,
  context: FormatContext,
  colours: Colours,
): readonly string[] {
  const { line, character } = file.analysis.parsed.lines.positionAt(finding.range.start);
  const place = `${line + 1}:${character + 1}`.padEnd(8);
  const severity = colours.severity(finding.severity, finding.severity.padEnd(11));
  const head = `  ${place}${severity} ${printable(finding.subject)}: ${printable(finding.message)} ${colours.quiet(`[${finding.rule}]`)}`;
  const related = finding.related.map((other) => {
    const parsed = context.fileNamed(other.file);
    const at = parsed?.lines.positionAt(other.range.start);
    const inFile = other.file === file.analysis.file ? '' : `${shownPath(filePath(other.file))} `;
    return `          ${colours.quiet(`${inFile}line ${(at?.line ?? 0) + 1}: ${printable(other.message)}`)}`;
  });
  const fixes = finding.fixes.map(
    ({ title, kind }) => `          ${colours.quiet(`fix (${kind}): ${printable(title)}`)}`,
  );
  return [head, ...related, ...fixes];
}

function summaryLine({ files, points, counts, accepted }: Summary): string {
  const found = SEVERITIES.filter((severity) => counts[severity] > 0).map((severity) =>
    countOf(severity, counts[severity]),
  );
  const what = found.length === 0 ? 'nothing to report' : found.join(', ');
  const alsoAccepted = accepted === 0 ? '' : `, ${accepted} accepted`;
  return `${what}${alsoAccepted} in ${counted(files, 'file')} with ${counted(points, 'point')}`;
}

function countOf(severity: Severity, count: number): string {
  return severity === 'information' ? `${count} information` : counted(count, severity);
}

/** Text from files without the control characters that would steer a terminal. */
function printable(text: string): string {
  return text.replace(/\p{Cc}/gu, '·');
}
