/** SARIF 2.1.0 (OASIS), which code scanning reads. Accepted findings are results with a suppression and its reason. */
import { filePath } from '../../analysis/file-location.ts';
import type { Finding, RelatedPlace } from '../../analysis/finding.ts';
import type { ParsedFile } from '../../analysis/parsed-file.ts';
import type { TextRange } from '../../base/text-range.ts';
import { RULES } from '../../rules/registry.generated.ts';
import type { Severity } from '../../rules/rule.ts';
import { shownPath } from '../load.ts';
import type { CheckedFile, Format, FormatContext } from './format.ts';

const SCHEMA = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

const LEVELS: Readonly<Record<Severity, string>> = {
  error: 'error',
  warning: 'warning',
  information: 'note',
  hint: 'note',
};

const RULE_INDEX: ReadonlyMap<string, number> = new Map(RULES.map(({ name }, index) => [name, index]));

export const sarif: Format = {
  ofFile: (file, context) => {
    const results = [
      ...file.findings.map((finding) => resultOf(finding, file, context)),
      ...file.accepted.map((finding) => ({
        ...resultOf(finding, file, context),
        suppressions: [{ kind: 'inSource', justification: finding.reason }],
      })),
    ];
    return results.map((result) => JSON.stringify(result)).join(',\n');
  },
  ofAll: (files) => {
    const rules = RULES.map(({ name, title, why, mend, severity, group }) => ({
      id: name,
      shortDescription: { text: title },
      fullDescription: { text: why },
      help: { text: mend },
      defaultConfiguration: { level: LEVELS[severity] },
      properties: { tags: [group] },
    }));
    const driver = JSON.stringify({ name: 'Dewright', rules });
    return `{"$schema":"${SCHEMA}","version":"2.1.0","runs":[{"tool":{"driver":${driver}},"columnKind":"utf16CodeUnits","results":[\n${files.join(',\n')}\n]}]}`;
  },
};

function resultOf(finding: Finding, file: CheckedFile, context: FormatContext) {
  return {
    ruleId: finding.rule,
    ruleIndex: RULE_INDEX.get(finding.rule) ?? -1,
    level: LEVELS[finding.severity],
    message: { text: `${finding.subject}: ${finding.message}` },
    locations: [{ physicalLocation: location(file.path, finding.range, file.analysis.parsed) }],
    ...(finding.related.length === 0
      ? {}
      : { relatedLocations: finding.related.map((place, id) => relatedLocation(place, id, context)) }),
  };
}

function relatedLocation({ message, file, range }: RelatedPlace, id: number, { fileNamed }: FormatContext) {
  const parsed = fileNamed(file);
  const path = shownPath(filePath(file));
  return {
    id,
    message: { text: message },
    ...(parsed === undefined ? {} : { physicalLocation: location(path, range, parsed) }),
  };
}

function location(path: string, range: TextRange, { lines }: ParsedFile) {
  const [from, to] = [lines.positionAt(range.start), lines.positionAt(range.end)];
  return {
    artifactLocation: { uri: path.split('/').map(encodeURIComponent).join('/') },
    region: {
      startLine: from.line + 1,
      startColumn: from.character + 1,
      endLine: to.line + 1,
      endColumn: to.character + 1,
    },
  };
}
