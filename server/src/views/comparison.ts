/** What has changed in meaning between the site and an older version of it, or another site. */
import type { Analysis } from '../analysis/analysis.ts';
import { baseName, relativeName } from '../analysis/file-location.ts';
import { element, type MarkupElement } from '../base/markup.ts';
import { type AnalysedSite, compareSites } from '../features/comparison/compare-sites.ts';
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
  const name = baseName(analysis.file);
  const body = [heading(1, `Changes in ${name}`), controls(analysis.file, against, others)];
  const [old, now] = [siteOf(before), siteOf(analysis)];
  if (now === undefined) return { title: 'Changes', body: [heading(1, 'Changes'), paragraph('The file is no site.')] };
  const told = old === undefined ? [paragraph(NO_VERSION)] : changes(old, now);
  return { title: `Changes: ${name}`, body: [...body, ...told] };
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

/** Undefined for what is no site, and for a text that does not parse: whole entries would seem to be gone. */
function siteOf(analysis: Analysis | undefined): AnalysedSite | undefined {
  if (analysis?.content.kind !== 'site') return undefined;
  const isBroken = analysis.parsed.model.problems.some(({ rule }) => rule === 'yaml-syntax');
  return isBroken ? undefined : { analysis, site: analysis.content.site };
}
