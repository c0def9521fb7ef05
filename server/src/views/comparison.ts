/** What has changed in meaning between the site and an older version of it, or another site. */
import type { Analysis } from '../analysis/analysis.ts';
import { baseName, relativeName } from '../analysis/file-location.ts';
import { element, type MarkupElement } from '../base/markup.ts';
import type { Outcome } from '../base/outcome.ts';
import { upperFirst } from '../base/words.ts';
import { type AnalysedSite, analysedSite, compareSites } from '../features/comparison/compare-sites.ts';
import { NOTHING_CHANGED, type ToldSection, tellComparison } from '../features/comparison/comparison-text.ts';
import { heading, list, paragraph } from './elements.ts';
import type { View } from './view.ts';

/** What the site is compared with: its last committed version, or the file of that URI. */
export const COMMITTED = 'committed';
export const AGAINST = 'against';

export interface ComparisonRequest {
  readonly analysis: Analysis;
  /** Undefined where there is no such version. */
  readonly before: Analysis | undefined;
  /** `committed`, or the URI of a file. */
  readonly against: string;
  /** The URIs of the other sites of the workspace. */
  readonly others: readonly string[];
}

export function comparisonView({ analysis, before, against, others }: ComparisonRequest): View {
  const now = analysedSite(analysis);
  if (!now.ok) return { title: 'Changes', body: [heading(1, 'Changes'), paragraph(`${upperFirst(now.problem)}.`)] };
  const name = baseName(analysis.file);
  const old = before && analysedSite(before);
  return {
    title: `Changes: ${name}`,
    body: [
      heading(1, `Changes in ${name}`),
      controls(analysis.file, against, others),
      ...(old === undefined ? [paragraph(NO_VERSION)] : told(old, now.value)),
    ],
  };
}

function told(before: Outcome<AnalysedSite, string>, after: AnalysedSite): readonly MarkupElement[] {
  return before.ok ? changes(before.value, after) : [paragraph(`The other version: ${before.problem}.`)];
}

const NO_VERSION =
  'There is no committed version to compare with: the file is in no repository that the editor knows, or was never committed, or the workspace is not trusted. Choose another file.';

function controls(file: string, against: string, others: readonly string[]): MarkupElement {
  const options = [
    element('option', { value: COMMITTED, selected: against === COMMITTED }, ['its last committed version']),
    ...others.map((other) =>
      element('option', { value: other, selected: against === other }, [relativeName(file, other)]),
    ),
  ];
  return element('form', { class: 'controls' }, [
    element('label', {}, ['Compared with ', element('select', { name: AGAINST }, options)]),
  ]);
}

function changes(before: AnalysedSite, after: AnalysedSite): readonly MarkupElement[] {
  const sections = tellComparison(compareSites(before, after));
  return sections.length === 0 ? [paragraph(NOTHING_CHANGED)] : sections.flatMap(section);
}

function section({ title, groups }: ToldSection): readonly MarkupElement[] {
  return [heading(2, title), ...groups.flatMap(({ heading: name, lines }) => [heading(3, name), list(lines)])];
}
