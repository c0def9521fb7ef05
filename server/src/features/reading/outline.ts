/** The outline of a file: what it holds, each with the one thing that a person looks for beside its name. */
import type { Analysis } from '../../analysis/analysis.ts';
import { shiftRange, type TextRange } from '../../base/text-range.ts';
import type { MapNode, PairNode, SyntaxNode } from '../../syntax/nodes.ts';
import { scalarIn } from '../support/scalar-in.ts';
import { outlineDetail, readingDetail } from './outline-detail.ts';

export type OutlineKind =
  | 'section'
  | 'space'
  | 'point'
  | 'model'
  | 'step'
  | 'quantity'
  | 'signal'
  | 'alarm'
  | 'phase'
  | 'part';

export interface OutlineItem {
  readonly name: string;
  readonly detail: string;
  readonly kind: OutlineKind;
  /** All of it, its name included. */
  readonly range: TextRange;
  readonly nameRange: TextRange;
  readonly children: readonly OutlineItem[];
}

/** Sections, their entries, the maps of an entry, and the maps of those: `signals`, then `AO1`. */
const DEEPEST = 4;

/** In a file with more entries than this an outline of everything is slow to show and to read. */
const MOST_ENTRIES_IN_DEPTH = 500;
const DEEPEST_IN_LARGE_FILES = 2;

export function outlineOf(analysis: Analysis): readonly OutlineItem[] {
  const { parts } = analysis.parsed.tree;
  const deepest = parts.length > MOST_ENTRIES_IN_DEPTH ? DEEPEST_IN_LARGE_FILES : DEEPEST;
  const sections: { item: OutlineItem; readonly children: OutlineItem[] }[] = [];
  for (const { part, offset } of parts) {
    const isEntry = part.path.length === 2;
    const path = part.path.slice(0, -1);
    const items = part.root === undefined ? [] : itemsOf(analysis, part.root, path, offset, deepest);
    const section = sections.at(-1);
    if (isEntry && section !== undefined) section.children.push(...items);
    else if (!isEntry) sections.push(...items.map((item) => ({ item, children: [...item.children] })));
  }
  return sections.map(({ item, children }) => {
    const end = Math.max(item.range.end, children.at(-1)?.range.end ?? 0);
    return { ...item, range: { start: item.range.start, end }, children };
  });
}

function itemsOf(
  analysis: Analysis,
  map: MapNode,
  path: readonly string[],
  offset: number,
  deepest: number,
): readonly OutlineItem[] {
  return map.pairs.flatMap((pair) => {
    if (path.length > 0 && pair.value.kind !== 'map' && pair.value.kind !== 'alias') return [];
    return itemOf(analysis, pair, [...path, pair.key.text], offset, deepest);
  });
}

function itemOf(
  analysis: Analysis,
  { key, value }: PairNode,
  path: readonly string[],
  offset: number,
  deepest: number,
): OutlineItem {
  return {
    name: key.text === '' ? '…' : key.text,
    detail: outlineDetail(analysis, path, value),
    kind: kindOf(path),
    range: { start: key.start + offset, end: Math.max(key.end, value.end) + offset },
    nameRange: shiftRange(key, offset),
    children: path.length < deepest ? childrenOf(analysis, value, path, offset, deepest) : [],
  };
}

function childrenOf(
  analysis: Analysis,
  value: SyntaxNode,
  path: readonly string[],
  offset: number,
  deepest: number,
): readonly OutlineItem[] {
  if (value.kind === 'map') return itemsOf(analysis, value, path, offset, deepest);
  if (value.kind !== 'list' || path.length > 1) return [];
  return value.items.flatMap((item, index) => {
    if (item.kind !== 'map') return [];
    const range = shiftRange(item, offset);
    const name = scalarIn(item, 'point')?.text ?? String(index + 1);
    const detail = readingDetail(analysis, range) ?? scalarIn(item, 'quantity')?.text ?? '';
    return { name, detail, kind: 'part', range, nameRange: range, children: [] };
  });
}

const KINDS_OF_ENTRIES: Readonly<Record<string, OutlineKind>> = {
  spaces: 'space',
  points: 'point',
  steps: 'step',
  'humidity-probes': 'model',
  'temperature-probes': 'model',
  transmitters: 'model',
  receivers: 'model',
};

const KINDS_INSIDE: Readonly<Record<string, OutlineKind>> = {
  reports: 'quantity',
  signals: 'signal',
  alarms: 'alarm',
  phases: 'phase',
};

function kindOf(path: readonly string[]): OutlineKind {
  if (path.length === 1) return 'section';
  if (path.length === 2) return KINDS_OF_ENTRIES[path[0] ?? ''] ?? 'part';
  return (path.length === 4 ? KINDS_INSIDE[path[2] ?? ''] : undefined) ?? 'part';
}
