/**
 * Where a file gives names and where it uses them. A part is read once for as long as it stands, whatever moves it, so
 * that a question about one name costs no walk over the file.
 */
import type { ParsedFile } from '../../analysis/parsed-file.ts';
import { remembered } from '../../base/remembered.ts';
import { shiftRange, type TextRange, touches } from '../../base/text-range.ts';
import { readAirTemperatureSource } from '../../model/air-temperature-source.ts';
import type { FileKind, ReferenceKind } from '../../model/schema.ts';
import type { Part, PlacedPart, ScalarNode, SyntaxNode } from '../../syntax/nodes.ts';
import { scalarIn } from '../support/scalar-in.ts';
import { textRangeOf, visitPart } from '../support/schema-walk.ts';

/** What a name stands for. A kit is named by the path of its file, everything else by its id or tag. */
export type NameKind =
  | 'site'
  | 'kit'
  | 'space'
  | 'point'
  | 'humidity-probe-model'
  | 'temperature-probe-model'
  | 'transmitter-model'
  | 'receiver-model'
  | 'log'
  | 'anchor';

export type NameRole = 'definition' | 'reference';

export interface Occurrence {
  readonly kind: NameKind;
  readonly role: NameRole;
  readonly name: string;
  /** The name itself, without quotes where it stands there as it is read. */
  readonly range: TextRange;
}

/** All names in a file, with their places in it, in the order of the text. */
export function occurrencesIn({ kind, tree }: ParsedFile): readonly Occurrence[] {
  return tree.parts.flatMap((placed) => placedOccurrences(kind, placed));
}

/** The name that a cursor touches. */
export function occurrenceAt({ kind, tree }: ParsedFile, offset: number): Occurrence | undefined {
  const placed = tree.parts.findLast((candidate) => candidate.offset <= offset);
  if (placed === undefined) return undefined;
  return placedOccurrences(kind, placed).find(({ range }) => touches(range, offset));
}

/** The names in one part, with their places in the part. */
export function occurrencesInPart(kind: FileKind, part: Part): readonly Occurrence[] {
  return OCCURRENCES[kind](part);
}

function placedOccurrences(kind: FileKind, { part, offset }: PlacedPart): readonly Occurrence[] {
  return occurrencesInPart(kind, part).map((found) => ({ ...found, range: shiftRange(found.range, offset) }));
}

const OCCURRENCES: Readonly<Record<FileKind, (part: Part) => readonly Occurrence[]>> = {
  site: remembered((part: Part) => readPart('site', part)),
  kit: remembered((part: Part) => readPart('kit', part)),
  visit: remembered((part: Part) => readPart('visit', part)),
};

/** The maps whose keys are the names of what they hold. */
const NAMED_ENTRIES: Readonly<Record<string, NameKind>> = {
  'site/spaces': 'space',
  'site/points': 'point',
  'kit/humidity-probes': 'humidity-probe-model',
  'kit/temperature-probes': 'temperature-probe-model',
  'kit/transmitters': 'transmitter-model',
  'kit/receivers': 'receiver-model',
};

const NAMED_VALUES: Readonly<Record<string, { readonly kind: NameKind; readonly role: NameRole }>> = {
  'site/site/id': { kind: 'site', role: 'definition' },
  'kit/kit/id': { kind: 'kit', role: 'definition' },
  'visit/visit/site': { kind: 'site', role: 'reference' },
};

const REFERENCES: Readonly<Partial<Record<ReferenceKind, NameKind>>> = {
  space: 'space',
  point: 'point',
  'humidity-probe-model': 'humidity-probe-model',
  'temperature-probe-model': 'temperature-probe-model',
  'transmitter-model': 'transmitter-model',
  'receiver-model': 'receiver-model',
  'kit-file': 'kit',
  'log-file': 'log',
};

function readPart(kind: FileKind, part: Part): readonly Occurrence[] {
  const found: Occurrence[] = [];
  const add = (name: NameKind, role: NameRole, node: ScalarNode): void => {
    if (node.text !== '') found.push({ kind: name, role, name: node.text, range: textRangeOf(node) });
  };
  let step: ScalarNode | undefined;
  visitPart(kind, part, {
    key: (key, mapPath) => {
      const named = NAMED_ENTRIES[[kind, ...mapPath].join('/')];
      if (named !== undefined) add(named, 'definition', key);
      if (kind === 'visit' && mapPath.join('/') === 'steps') step = key;
    },
    node: (node, schema, path) => {
      found.push(...anchorsOn(node));
      if (step !== undefined && path.length === 2) found.push(...tagInStep(step, node));
      if (node.kind !== 'scalar') return;
      const own = NAMED_VALUES[[kind, ...path].join('/')];
      if (own !== undefined) add(own.kind, own.role, node);
      const referred = schema?.reference === undefined ? undefined : REFERENCES[schema.reference];
      if (referred !== undefined) add(referred, 'reference', node);
      const isSource = schema?.['air-temperature-source'] === true || (kind === 'visit' && isSourceSetting(path));
      if (isSource && isTagOfPoint(node.text)) add('point', 'reference', node);
    },
  });
  return found.sort((one, other) => one.range.start - other.range.start);
}

/** The tag behind the name of a step: `heater-on-K2-MT-101`. */
function tagInStep(key: ScalarNode, entry: SyntaxNode): readonly Occurrence[] {
  const point = scalarIn(entry, 'point');
  if (point === undefined || !key.text.endsWith(`-${point.text}`)) return [];
  const { end } = textRangeOf(key);
  return [{ kind: 'point', role: 'reference', name: point.text, range: { start: end - point.text.length, end } }];
}

function anchorsOn(node: SyntaxNode): readonly Occurrence[] {
  if (node.kind === 'alias') return [{ kind: 'anchor', role: 'reference', name: node.name, range: afterSign(node) }];
  const { anchor } = node;
  return anchor === undefined
    ? []
    : [{ kind: 'anchor', role: 'definition', name: anchor.name, range: afterSign(anchor) }];
}

/** `relative-humidity.air-temperature` of a visit's settings. */
function isSourceSetting(path: readonly string[]): boolean {
  return path[0] === 'settings' && path.at(-1)?.endsWith('.air-temperature') === true;
}

function isTagOfPoint(text: string): boolean {
  const source = readAirTemperatureSource(text);
  return source.ok && source.value.value.kind === 'point';
}

/** The name behind `&` or `*`. */
function afterSign({ start, end }: TextRange): TextRange {
  return { start: start + 1, end };
}
