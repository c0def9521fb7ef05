/** Text from files and facts as Markdown that cannot turn into markup. */
import { upperFirst } from '../../base/words.ts';
import { type Fact, isKnown, showCorner, showFact } from '../../evaluate/facts/fact.ts';

/** Escapes what Markdown, HTML or the editor's icons would take for markup. */
export function escapeMarkdown(text: string): string {
  return text.replace(/[\\`*_{}[\]<>()#+!|~$&-]/g, (character) => `\\${character}`).replace(/\r?\n/g, ' ');
}

export function inlineCode(text: string): string {
  return `\`${text.replace(/`/g, 'ʼ').replace(/\r?\n/g, ' ')}\``;
}

/** Those of the sections that say something, as one text. */
export function sectionsTogether(sections: readonly string[]): string {
  return sections.filter((section) => section !== '').join('\n\n');
}

/** What it is, and how it came about. */
export function factSection(fact: Fact): string {
  return [factLine(fact), ...factDerivation(fact)].join('\n');
}

/** One line: what it is, its value, where it is worst. */
export function factLine(fact: Fact): string {
  const title = upperFirst(fact.title);
  if (!isKnown(fact)) return `${title}: none, ${escapeMarkdown(fact.missing ?? 'not known')}`;
  const at = fact.at === undefined ? '' : ` at ${escapeMarkdown(showCorner(fact.at))}`;
  return `${title}: **${showFact(fact)}**${at}`;
}

/** The derivation: inputs, relation, validity, source. */
function factDerivation(fact: Fact): readonly string[] {
  const inputs = fact.inputs.map(({ label, text }) => `${escapeMarkdown(label)} ${escapeMarkdown(text)}`).join('; ');
  const validity = fact.formulas.flatMap(({ title, validity: ranges }) =>
    ranges
      .filter(({ unit }) => unit !== '1')
      .map(({ argument, low, high, unit }) => `${title.split(',')[0]}: ${argument} ${low} … ${high} ${unit}`),
  );
  const lines = [
    inputs === '' ? '' : `- from: ${inputs}`,
    fact.relation === undefined ? '' : `- by: ${inlineCode(fact.relation)}`,
    validity.length === 0 ? '' : `- valid: ${escapeMarkdown([...new Set(validity)].join('; '))}`,
    fact.formulas.length === 0
      ? ''
      : `- source: ${escapeMarkdown([...new Set(fact.formulas.map(({ source }) => source))].join('; '))}`,
    ...fact.notes.map((note) => `- note: ${escapeMarkdown(note)}`),
  ];
  return lines.filter((line) => line !== '');
}
