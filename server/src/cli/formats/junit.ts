/** JUnit XML, which most CI systems show as tests: a file is a suite, a finding a failed case. */
import type { Finding } from '../../analysis/finding.ts';
import type { CheckedFile, Format } from './format.ts';

export const junit: Format = {
  ofFile: (file) => {
    const failures = file.findings.filter(fails);
    const cases =
      file.findings.length === 0
        ? [`  <testcase classname="${xml(file.path)}" name="no findings"/>`]
        : file.findings.map((finding) => testCase(finding, file));
    return [
      ` <testsuite name="${xml(file.path)}" tests="${cases.length}" failures="${failures.length}">`,
      ...cases,
      ' </testsuite>',
    ].join('\n');
  },
  ofAll: (files, { counts }) =>
    [
      '<?xml version="1.0" encoding="UTF-8"?>',
      `<testsuites name="dewright" failures="${counts.error + counts.warning}">`,
      ...files,
      '</testsuites>',
    ].join('\n'),
};

/** Information and hints are told, but no failure. */
function fails({ severity }: Finding): boolean {
  return severity === 'error' || severity === 'warning';
}

function testCase(finding: Finding, { path, analysis }: CheckedFile): string {
  const { line, character } = analysis.parsed.lines.positionAt(finding.range.start);
  const place = `${path}:${line + 1}:${character + 1}`;
  const name = `${finding.rule} ${finding.subject} ${line + 1}:${character + 1}`;
  const body = fails(finding)
    ? `<failure type="${xml(finding.severity)}" message="${xml(finding.message)}">${xml(place)}</failure>`
    : `<system-out>${xml(`${finding.severity}: ${finding.message} (${place})`)}</system-out>`;
  return `  <testcase classname="${xml(path)}" name="${xml(name)}">${body}</testcase>`;
}

/** XML 1.0 has no way to write most control characters. */
function xml(text: string): string {
  return text
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/\p{Cc}/gu, ' ')
    .replace(/[\ufffe\uffff]/g, ' ');
}
