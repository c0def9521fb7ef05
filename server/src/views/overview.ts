/** Every point of the workspace in one table: how certain its reports are, how dry its sensor stays, what is found. */

import type { Analysis } from '../analysis/analysis.ts';
import { baseName } from '../analysis/file-location.ts';
import type { Finding } from '../analysis/finding.ts';
import { element } from '../base/markup.ts';
import { expandedUncertainty } from '../evaluate/budget/uncertainty-facts.ts';
import { marginToDewPoint } from '../evaluate/dryness/dryness.ts';
import { type Fact, isKnown, showFact } from '../evaluate/facts/fact.ts';
import { firstProposed } from '../evaluate/history/history.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { countsInWords, findingsBySubject } from '../features/support/finding-counts.ts';
import { showQuantity, showShare } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import { SEVERITIES } from '../rules/rule.ts';
import { type Cell, type Column, heading, linkTo, paragraph, table, textCell, wholeCell } from './elements.ts';
import type { View } from './view.ts';

/** The row of one report of a point; of a point that reports nothing there is one too. */
export type OverviewRow = readonly Cell[];

const COLUMNS: readonly Column[] = [
  { title: 'Point' },
  { title: 'Site' },
  { title: 'Space' },
  { title: 'Quantity' },
  { title: 'Uncertainty', isNumber: true },
  { title: 'Tolerance', isNumber: true },
  { title: 'Tolerance used', isNumber: true },
  { title: 'Margin to dew point', isNumber: true },
  { title: 'Findings' },
  { title: 'Next check' },
];

const TABLE = 'all-points';

/** @param rows of all files, file by file @param left how many sites are still to be looked at */
export function overviewView(rows: readonly OverviewRow[], left = 0): View {
  const title = 'All points';
  if (rows.length === 0 && left === 0)
    return { title, body: [heading(1, title), paragraph('The workspace has no point.')] };
  const filter = element('input', { type: 'search', id: `${TABLE}-filter`, 'data-filters': TABLE });
  return {
    title,
    body: [
      heading(1, title),
      element('form', { class: 'controls' }, [element('label', {}, ['Show the rows with ', filter])]),
      ...(left === 0 ? [] : [element('p', { role: 'status' }, [`Sites still to be looked at: ${left}.`])]),
      table({ title, id: TABLE, columns: COLUMNS, rows }),
    ],
  };
}

export function overviewRows(analysis: Analysis): readonly OverviewRow[] {
  const { content, file } = analysis;
  if (content.kind !== 'site') return [];
  const { site } = content;
  const bySubject = findingsBySubject(analysis);
  return [...site.points.values()].flatMap((point) => {
    const { start } = analysis.parsed.rangeOf(point.entry.keyOrigin);
    const first = [
      { content: [linkTo({ file, start }, point.tag)], look: 'whole' as const },
      textCell(site.settings.id ?? baseName(file)),
      textCell(point.point.space?.value ?? ''),
    ];
    const last = [marginCell(point), findingsCell(bySubject.get(point.tag) ?? []), checkCell(point)];
    const reports = point.reports.map(({ quantity, report }) => [
      textCell(quantityInfo(quantity).title),
      ...certaintyCells(point.facts.get(expandedUncertainty(quantity)), report.value.tolerance?.value.value),
    ]);
    const shown = reports.length > 0 ? reports : [[NOTHING, NOTHING, NOTHING, NOTHING]];
    return shown.map((cells) => [...first, ...cells, ...last]);
  });
}

/** At the end of a column where it is sorted. */
const NOTHING: Cell = { content: [''], value: Number.MAX_VALUE };

/** The expanded uncertainty, the tolerance, and the part of the tolerance that the uncertainty takes. */
function certaintyCells(uncertainty: Fact | undefined, tolerance: number | undefined): readonly Cell[] {
  if (!isKnown(uncertainty)) {
    const missing = uncertainty?.missing;
    return [missing === undefined ? NOTHING : { ...NOTHING, content: ['none'], hint: missing }, NOTHING, NOTHING];
  }
  const { value, dimension } = uncertainty;
  const known = { content: [showFact(uncertainty)], value };
  if (tolerance === undefined || !(tolerance > 0)) return [known, NOTHING, NOTHING];
  const used = value / tolerance;
  const permitted = { content: [showQuantity(tolerance, dimension)], value: tolerance };
  const ratio = { content: [showShare(used)], value: used };
  return [known, permitted, used > 1 ? { ...ratio, look: 'beyond' as const } : ratio];
}

function marginCell({ facts }: PointEvaluation): Cell {
  const margin = facts.get(marginToDewPoint);
  return isKnown(margin) ? { content: [showFact(margin)], value: margin.value } : NOTHING;
}

/** Sorted by the gravest, then by how many of it there are. */
function findingsCell(findings: readonly Finding[]): Cell {
  const weights = SEVERITIES.toReversed().map((severity, index) => {
    const count = findings.filter((finding) => finding.severity === severity).length;
    return Math.min(count, 999) * 1000 ** index;
  });
  return { content: [countsInWords(findings)], value: weights.reduce((sum, weight) => sum + weight, 0) };
}

/** By the plan, or sooner where the readings of the visits ask for it. */
function checkCell({ checkPlan, histories }: PointEvaluation): Cell {
  const due = checkPlan.due?.due;
  const asked = firstProposed(histories)?.proposed.date;
  if (due === undefined) return NOTHING;
  const isSooner = asked !== undefined && asked < due;
  const sortedBy = (date: string): number => Number(date.replaceAll('-', ''));
  if (!isSooner) return { ...wholeCell(due), value: sortedBy(due) };
  return { ...wholeCell(`${asked} by readings`), value: sortedBy(asked), hint: `Planned for ${due}.` };
}
