/** What a visit file's place says beside the words of the format: what a step should show, whether a pair agrees. */
import type { Analysis } from '../../analysis/analysis.ts';
import type { TextRange } from '../../base/text-range.ts';
import type { Fact } from '../../evaluate/facts/fact.ts';
import { enWords } from '../../evaluate/history/words.ts';
import { readingFacts } from '../../handover/reading-facts.ts';
import { settingWords } from '../../handover/setting-value.ts';
import { agrees, type ErrorOfVisit } from '../../handover/visit-errors.ts';
import type { Location } from '../../syntax/locate.ts';
import { escapeMarkdown, inlineCode } from '../support/markdown.ts';
import { readingAt, type StepAt, settingAt, stepNamed } from '../support/visit-places.ts';

/** Of a step or a setting, which the format alone tells little of. */
export function wordsOfVisit(analysis: Analysis, { path, on }: Location, place: TextRange): readonly string[] {
  if (analysis.content.kind !== 'visit') return [];
  const [section, key = ''] = path;
  if (section === 'steps' && path.length === 2 && on === 'key') return stepSections(stepNamed(analysis, key));
  return section === 'settings' ? settingSections(analysis, place) : [];
}

/** Whether the pair of a reading agrees. */
export function agreementAt(analysis: Analysis, { path }: Location, place: TextRange): readonly string[] {
  const found = path[0] === 'readings' ? readingAt(analysis, place) : undefined;
  return found === undefined ? [] : [agreement(found)];
}

/** The numbers of the reading at a place. */
export function factsOfReading(analysis: Analysis, place: TextRange): readonly Fact[] {
  return factsOfError(readingAt(analysis, place));
}

/** None where nothing was read, or an uncertainty is not known. */
export function factsOfError(found: ErrorOfVisit | undefined): readonly Fact[] {
  const facts = found && readingFacts(found.error, found.point.settings.coverage.value);
  return facts === undefined ? [] : [facts.error, facts.ofPoint, facts.ofReference, facts.allowed];
}

export function stepSections(at: StepAt | undefined): readonly string[] {
  if (at === undefined) return [];
  const { step, last } = at;
  const state = last === undefined ? '' : `${last.done ? 'Done' : 'Open'}, as of ${last.date}.`;
  return [
    `**${escapeMarkdown(step.title)}**, ${escapeMarkdown(step.subject)}`,
    escapeMarkdown(step.todo),
    `**What should be seen**: ${escapeMarkdown(step.expect)}`,
    ...(step.caution === undefined ? [] : [`**Caution**: ${escapeMarkdown(step.caution)}`]),
    escapeMarkdown(state),
  ];
}

function agreement({ error, point }: ErrorOfVisit): string {
  const { enNumber, pointUncertainty } = error;
  if (enNumber === undefined) {
    const lacking = pointUncertainty === undefined ? `that of ${point.tag}` : 'that of the reference';
    return `Whether the two agree cannot be told: of their uncertainties ${escapeMarkdown(lacking)} is not known.`;
  }
  const words = agrees(error) === true ? 'the two agree' : 'the two disagree';
  return `**${enWords(enNumber)}**: ${words}, as far as their uncertainties go (up to 1 agrees).`;
}

function settingSections(analysis: Analysis, { start }: TextRange): readonly string[] {
  const found = settingAt(analysis, start);
  if (found?.setting === undefined) return [];
  const { path, setting, wanted, compared } = found;
  const { description = '' } = setting.schema;
  const site = wanted === undefined ? 'nothing' : inlineCode(settingWords(wanted));
  const verdict =
    compared === undefined ? '' : compared.agrees ? ', as the instrument has it' : ', and the instrument differs';
  return [`**${escapeMarkdown(path)}**: ${description}`, `The site file says ${site}${verdict}.`];
}
