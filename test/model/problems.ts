/** What the model says of a file, told in one line per problem, and what its suggested edits make of the text. */
import { type ParsedFile, parseSource } from '../../server/src/analysis/parsed-file.ts';
import { applyEdits } from '../../server/src/base/text-range.ts';
import type { SuggestedEdit } from '../../server/src/model/problem.ts';
import type { FileKind } from '../../server/src/model/schema.ts';
import type { Origin } from '../../server/src/syntax/nodes.ts';

export interface ToldProblem {
  readonly rule: string;
  readonly subject: string;
  /** The stretch of text that is marked. */
  readonly marked: string;
  readonly sentence: string;
  /** The stretch that the related place marks, if any. */
  readonly related: string | undefined;
  readonly fixes: readonly string[];
  /** The whole text after the first fix, where there is one. */
  readonly mended: string | undefined;
}

export function read(text: string, kind: FileKind = 'site', before?: ParsedFile): ParsedFile {
  return parseSource(`file:///fennmoor.dew${kind}.yaml`, kind, text, before);
}

export function problemsOf(text: string, kind: FileKind = 'site'): readonly ToldProblem[] {
  const file = read(text, kind);
  const textAt = (origin: Origin): string => {
    const { start, end } = file.rangeOf(origin);
    return text.slice(start, end);
  };
  const applied = ({ edit }: SuggestedEdit): string =>
    applyEdits(text, [{ range: file.rangeOf(edit), newText: edit.newText }]);
  return file.model.problems.map(({ rule, subject, origin, sentence, suggestions, related }) => ({
    rule,
    subject,
    marked: textAt(origin),
    sentence,
    related: related === undefined ? undefined : textAt(related.origin),
    fixes: suggestions.map(({ title, kind: fixKind }) => (fixKind === 'safe' ? `${title} (safe)` : title)),
    mended: suggestions[0] === undefined ? undefined : applied(suggestions[0]),
  }));
}

/** A site with one space; `lines` are what the space holds. */
export function siteWithSpace(...lines: readonly string[]): string {
  return [
    'dewright: 1',
    'site: {id: fennmoor}',
    'spaces:',
    '  kiln-2:',
    ...lines.map((line) => `    ${line}`),
    '',
  ].join('\n');
}

/** A site with one point; `lines` are what the point holds besides its space. */
export function siteWithPoint(...lines: readonly string[]): string {
  const point = ['points:', '  K2-MT-101:', '    space: kiln-2', ...lines.map((line) => `    ${line}`)];
  return `${siteWithSpace('air: {temperature: 60 degC, humidity: 80 %RH}')}${point.join('\n')}\n`;
}
