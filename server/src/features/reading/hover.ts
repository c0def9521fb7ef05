/** What stands under the cursor: the key, the value in other units, and the facts that it goes into. */

import type { Analysis } from '../../analysis/analysis.ts';
import { overlaps, shiftRange, type TextRange } from '../../base/text-range.ts';
import { factsOfPoint } from '../../evaluate/all-facts.ts';
import { type Fact, isKnown } from '../../evaluate/facts/fact.ts';
import type { History } from '../../evaluate/history/history.ts';
import { DIMENSIONS, type Dimension } from '../../quantity/dimension.ts';
import { formatNumber } from '../../quantity/format-quantity.ts';
import { isQuantityName, quantityInfo } from '../../quantity/quantities.ts';
import { readRange } from '../../quantity/read-quantity.ts';
import { textOf } from '../../syntax/cursor.ts';
import { type Location, locate } from '../../syntax/locate.ts';
import { budgetTable } from '../support/budget-table.ts';
import { historySection } from '../support/history-table.ts';
import { factLine, factSection, inlineCode, sectionsTogether } from '../support/markdown.ts';
import { dimensionAt } from '../support/place-dimension.ts';
import { recordingSections } from '../support/recording-section.ts';
import { kindBeside, schemaAt } from '../support/schema-path.ts';
import { factsOfSpace } from '../support/subject-facts.ts';
import { readingAt } from '../support/visit-places.ts';
import { modelSummary } from './hover-models.ts';
import { agreementAt, factsOfReading, wordsOfVisit } from './hover-visits.ts';

export interface Hover {
  readonly range: TextRange;
  readonly markdown: string;
}

/** More facts than this are told by their lines alone. */
const MOST_DERIVATIONS = 3;

/** A value is not written in a unit that would make more noughts of it: 210 m is no 210000 mm. */
const [LEAST_READABLE, MOST_READABLE] = [0.01, 10_000];

/** A Markdown image of a history. @param planned the day of the next check by the plan */
export type HistoryPicture = (history: History, planned: string | undefined) => string;

/** @param pictureOf where the editor shows images in hovers; the text says the same */
export function hoverAt(analysis: Analysis, offset: number, pictureOf?: HistoryPicture): Hover | undefined {
  const location = locate(analysis.parsed.tree, offset);
  if (location === undefined) return undefined;
  const ofVisit = wordsOfVisit(analysis, location, placeOf(location));
  const markdown = sectionsTogether([
    ...(ofVisit.length > 0 ? ofVisit : describe(analysis, location)),
    ...agreementAt(analysis, location, placeOf(location)),
    ...historiesAt(analysis, location, pictureOf),
    ...recordingSections(analysis, location.path),
    ...factSections(analysis, location),
  ]);
  return markdown === '' ? undefined : { range: placeOf(location), markdown };
}

function placeOf({ range, partOffset }: Location): TextRange {
  return shiftRange(range, partOffset);
}

function describe({ parsed }: Analysis, location: Location): readonly string[] {
  const place = schemaAt(parsed.kind, location.path, kindBeside(location));
  const name = location.path.at(-1) ?? '';
  if (place === undefined) return [];
  const { schema, parent } = place;
  const text = textOf(location);
  const named = location.on === 'key' && isQuantityName(name) ? name : isQuantityName(text) ? text : undefined;
  if (named !== undefined) {
    const { title, about, dimension } = quantityInfo(named);
    const unit = DIMENSIONS[dimension].units[0]?.symbol ?? '';
    return [`**${title}**, in ${unit}`, about];
  }
  const isFreeName = parent?.properties?.[name] === undefined;
  const heading = location.on === 'key' && !isFreeName ? `**${name}**: ` : '';
  const description = schema.description ?? schema.title ?? '';
  const meaning = schema.enumDescriptions?.[schema.enum?.indexOf(text) ?? -1];
  return [
    location.on === 'value' && meaning !== undefined ? `**${text}**: ${meaning}` : `${heading}${description}`,
    location.on === 'value' && schema.quantity !== undefined
      ? inOtherUnits(text, dimensionAt(parsed.kind, location))
      : '',
    schema.default === undefined ? '' : `Built in: ${inlineCode(String(schema.default))}`,
  ];
}

function inOtherUnits(text: string, dimension: Dimension | undefined): string {
  if (dimension === undefined) return '';
  const read = readRange(text, dimension);
  if (!read.ok) return '';
  const { low, high, unit, gauge } = read.value.value;
  const others = DIMENSIONS[dimension].units.filter((other) => other.symbol !== unit.symbol);
  const shown = others.flatMap((other) => {
    const [from, to] = [(low - other.offset) / other.factor, (high - other.offset) / other.factor];
    const size = Math.max(Math.abs(from), Math.abs(to));
    if (size !== 0 && (size < LEAST_READABLE || size > MOST_READABLE)) return [];
    const symbol = gauge ? `${other.symbol}(g)` : other.symbol;
    return from === to ? `${significant(from)} ${symbol}` : `${significant(from)} … ${significant(to)} ${symbol}`;
  });
  return shown.length === 0 ? '' : `= ${shown.join(' = ')}`;
}

function significant(value: number): string {
  const magnitude = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value)));
  return formatNumber(value, Math.max(0, 3 - magnitude));
}

function factSections(analysis: Analysis, location: Location): readonly string[] {
  const facts = factsAt(analysis, location);
  const summary = modelSummary(analysis, location);
  const told =
    facts.length <= MOST_DERIVATIONS ? facts.map(factSection) : [facts.map((fact) => `- ${factLine(fact)}`).join('\n')];
  return [...summary, ...told, budgetAt(analysis, location)];
}

/** Of a reported quantity its uncertainty budget, at the worst corner of all phases. */
function budgetAt({ content }: Analysis, { path }: Location): string {
  const [map, tag = '', section, quantity = ''] = path;
  if (content.kind !== 'site' || map !== 'points' || section !== 'reports' || !isQuantityName(quantity)) return '';
  const budget = content.site.points.get(tag)?.budgets.get(quantity)?.worst;
  return budget === undefined ? '' : budgetTable(budget);
}

/** Of a plan of checks what the visits found of every quantity; of a reading, of its own. */
function historiesAt(analysis: Analysis, location: Location, pictureOf: HistoryPicture = () => ''): readonly string[] {
  const { content } = analysis;
  const [map, tag = '', section] = location.path;
  const read = map === 'readings' ? readingAt(analysis, placeOf(location)) : undefined;
  if (read !== undefined) return [historySection(read.history, pictureOf(read.history, read.point.checkPlan.due?.due))];
  if (content.kind !== 'site' || map !== 'points' || section !== 'checks') return [];
  const point = content.site.points.get(tag);
  const planned = point?.checkPlan.due?.due;
  const histories = [...(point?.histories.values() ?? [])];
  return histories.map((history) => historySection(history, pictureOf(history, planned)));
}

/** The facts that a person looks for at a place: those that findings here speak of, then those that it goes into. */
function factsAt(analysis: Analysis, location: Location): readonly Fact[] {
  const place = placeOf(location);
  const told = [...analysis.findings, ...analysis.accepted];
  const found = told.filter(({ range }) => overlaps(range, place)).flatMap(({ facts }) => facts);
  return [...new Map([...found, ...factsOfPlace(analysis, location, place)].map((fact) => [fact.id, fact])).values()];
}

function factsOfPlace(analysis: Analysis, location: Location, place: TextRange): readonly Fact[] {
  const { content, parsed } = analysis;
  if (content.kind === 'visit' && location.path[0] === 'readings') return factsOfReading(analysis, place);
  if (content.kind !== 'site') return [];
  const [map, entry = '', ...inner] = location.path;
  const { spaces, points } = content.site;
  const goesInto = (fact: Fact): boolean =>
    fact.inputs.some(
      ({ origin, file }) => file === undefined && origin !== undefined && covers(parsed.rangeOf(origin), place),
    );
  if (map === 'spaces') {
    const space = spaces.get(entry);
    if (space === undefined) return [];
    const facts = factsOfSpace(space);
    if (inner.length === 0) return facts;
    return facts.filter((fact) => isKnown(fact) && goesInto(fact) && (fact.at?.phase ?? 'air') === (inner[1] ?? 'air'));
  }
  if (map !== 'points') return [];
  const point = points.get(entry);
  if (point === undefined) return [];
  const all = factsOfPoint(point);
  const [section, name] = inner;
  if (section === undefined) return all;
  if (section === 'checks' && name === undefined)
    return all.filter((fact) => fact.id.startsWith('check/') || goesInto(fact));
  if (section === 'space') return point.space === undefined ? [] : factsOfSpace(point.space);
  if (section === 'reports' && name !== undefined) return all.filter(({ id }) => id.startsWith(`${name}/`));
  if ((section === 'signals' || section === 'alarms') && name !== undefined && inner.length === 2) {
    return all.filter(({ id }) => id.startsWith(`${section.slice(0, -1)}/${name}/`));
  }
  if (section === 'humidity-probe' && (name === undefined || name === 'heater')) {
    return all.filter(({ id }) => !id.includes('/'));
  }
  return all.filter(goesInto);
}

function covers(outer: TextRange, inner: TextRange): boolean {
  return outer.start <= inner.start && outer.end >= inner.end;
}
