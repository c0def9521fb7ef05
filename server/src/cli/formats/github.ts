/** Workflow commands by which a CI run marks lines of a change: `::error file=…,line=…::message`. */
import { SEVERITIES, type Severity } from '../../rules/rule.ts';
import type { Format } from './format.ts';

const COMMANDS: Readonly<Record<Severity, string>> = {
  error: 'error',
  warning: 'warning',
  information: 'notice',
  hint: 'notice',
};

export const github: Format = {
  ofFile: ({ path, findings, analysis }) =>
    findings
      .map(({ severity, range, rule, subject, message }) => {
        const { lines } = analysis.parsed;
        const [from, to] = [lines.positionAt(range.start), lines.positionAt(range.end)];
        const place = `line=${from.line + 1},col=${from.character + 1},endLine=${to.line + 1},endColumn=${to.character + 1}`;
        return `::${COMMANDS[severity]} file=${property(path)},${place},title=${property(rule)}::${data(`${subject}: ${message}`)}`;
      })
      .join('\n'),
  ofAll: (files, { counts }) =>
    [...files, SEVERITIES.map((severity) => `${severity} ${counts[severity]}`).join(', ')].join('\n'),
};

/** The escapes of the workflow commands; what stands in a property escapes two characters more. */
function data(text: string): string {
  return text.replace(/%/g, '%25').replace(/\r/g, '%0D').replace(/\n/g, '%0A');
}

function property(text: string): string {
  return data(text).replace(/:/g, '%3A').replace(/,/g, '%2C');
}
