/** The JSON of `check`: findings with their numbers, and every fact of every space and point. */
import { filePath } from '../../analysis/file-location.ts';
import type { Finding, RelatedPlace } from '../../analysis/finding.ts';
import type { LineIndex, Position } from '../../base/line-index.ts';
import type { TextRange } from '../../base/text-range.ts';
import { type Corner, type Fact, isKnown, type KnownFact, showFact } from '../../evaluate/facts/fact.ts';
import { subjectFacts } from '../../features/support/subject-facts.ts';
import { showNumber } from '../../quantity/format-quantity.ts';
import { shownPath } from '../load.ts';
import type { CheckedFile, Format, FormatContext } from './format.ts';

const SIGNIFICANT_DIGITS = 8;

/** One file a line, so that two runs compare line by line. */
export const json: Format = {
  ofFile: (file, context) => JSON.stringify(fileJson(file, context)),
  ofAll: (files, { counts, ...summary }) => {
    const { accepted, ...sizes } = summary;
    return `{"version":1,"files":[\n${files.join(',\n')}\n],"summary":${JSON.stringify({ ...sizes, ...counts, accepted })}}`;
  },
};

function fileJson(file: CheckedFile, context: FormatContext) {
  return {
    path: file.path,
    findings: file.findings.map((finding) => findingJson(finding, file, context)),
    subjects: subjectFacts(file.analysis).map(({ subject, kind, facts }) => ({
      subject,
      kind,
      facts: Object.fromEntries(facts.map((fact) => [fact.id, factJson(fact, file)])),
    })),
  };
}

function findingJson(finding: Finding, file: CheckedFile, context: FormatContext) {
  return {
    rule: finding.rule,
    severity: finding.severity,
    message: finding.message,
    range: rangeJson(finding.range, file.analysis.parsed.lines),
    subject: finding.subject,
    values: Object.fromEntries(finding.facts.filter(isKnown).map((fact) => [fact.id, valueJson(fact)])),
    related: finding.related.map((place) => relatedJson(place, context)),
    fixes: finding.fixes.map(({ title, kind }) => ({ title, kind })),
  };
}

function relatedJson({ message, file, range }: RelatedPlace, { fileNamed }: FormatContext) {
  const lines = fileNamed(file)?.lines;
  return { message, path: shownPath(filePath(file)), range: lines === undefined ? {} : rangeJson(range, lines) };
}

function valueJson(fact: KnownFact) {
  const { value, unit } = showNumber(fact.value, fact.dimension);
  return {
    value: rounded(value),
    unit,
    text: showFact(fact),
    ...(fact.at === undefined ? {} : { at: cornerJson(fact.at) }),
  };
}

function factJson(fact: Fact, file: CheckedFile) {
  const inputs = fact.inputs.map(({ label, text, origin, file: other }) => {
    const inFile = other === undefined ? file.analysis.parsed : file.analysis.fileNamed(other);
    if (origin === undefined || inFile === undefined) return { label, text };
    const range = rangeJson(inFile.rangeOf(origin), inFile.lines);
    return other === undefined ? { label, text, range } : { label, text, path: shownPath(filePath(other)), range };
  });
  return {
    title: fact.title,
    ...(isKnown(fact) ? valueJson(fact) : { missing: fact.missing }),
    inputs,
    ...(fact.relation === undefined ? {} : { relation: fact.relation }),
    sources: [...new Set(fact.formulas.map(({ source }) => source))],
    notes: fact.notes,
  };
}

function cornerJson(corner: Corner) {
  return {
    ...(corner.phase === undefined ? {} : { phase: corner.phase }),
    'air-temperature': rounded(corner.airCelsius),
    'relative-humidity': rounded(corner.relativeHumidity * 100),
    'dew-point': rounded(corner.dewPointCelsius),
    pressure: rounded(corner.pressure),
    ...(corner.speed === undefined ? {} : { speed: rounded(corner.speed) }),
  };
}

function rangeJson(range: TextRange, lines: LineIndex): { readonly start: Position; readonly end: Position } {
  return { start: lines.positionAt(range.start), end: lines.positionAt(range.end) };
}

/** Numbers in JSON carry eight significant digits: more are noise, fewer would lose what was computed. */
export function rounded(value: number): number {
  return Number(value.toPrecision(SIGNIFICANT_DIGITS));
}
