/** What a name means across the files of the workspace: where it is given, and everywhere it is used. */
import { resolveFile } from '../../analysis/file-location.ts';
import type { ParsedFile } from '../../analysis/parsed-file.ts';
import type { Workspace } from '../../analysis/workspace.ts';
import type { TextRange } from '../../base/text-range.ts';
import { kitModelOf, siteModelOf, visitModelOf } from '../../model/file-models.ts';
import { type NameKind, type NameRole, type Occurrence, occurrenceAt, occurrencesIn } from './occurrences.ts';

export interface NamedThing {
  /** The occurrence that it was found by. */
  readonly occurrence: Occurrence;
  readonly file: string;
  /** The file that gives the name; undefined where none does. */
  readonly home: string | undefined;
}

export interface NamePlace {
  readonly file: string;
  readonly range: TextRange;
  readonly role: NameRole;
}

export type ModelKind = Extract<NameKind, `${string}-model`>;

const MODELS_OF_KIT = {
  'humidity-probe-model': 'humidityProbes',
  'temperature-probe-model': 'temperatureProbes',
  'transmitter-model': 'transmitters',
  'receiver-model': 'receivers',
} as const satisfies Record<ModelKind, string>;

export function isModelKind(kind: NameKind): kind is ModelKind {
  return kind in MODELS_OF_KIT;
}

export function thingAt(workspace: Workspace, parsed: ParsedFile, offset: number): NamedThing | undefined {
  const occurrence = occurrenceAt(parsed, offset);
  if (occurrence === undefined) return undefined;
  return { occurrence, file: parsed.file, home: homeOf(workspace, parsed, occurrence) };
}

/** Every place of a thing, its definition included, file by file. */
export function placesOf(workspace: Workspace, { occurrence, file, home }: NamedThing): readonly NamePlace[] {
  const own = workspace.parsed(file);
  if (own === undefined) return [];
  if (occurrence.kind === 'anchor') return placesOfAnchor(own, occurrence);
  const places: NamePlace[] = [];
  for (const other of home === undefined ? [file] : filesThatMayUse(workspace, occurrence.kind, home)) {
    const parsed = workspace.parsed(other);
    if (parsed === undefined) continue;
    const same = occurrencesIn(parsed).filter(
      ({ kind, name }) => kind === occurrence.kind && (kind === 'kit' || name === occurrence.name),
    );
    for (const found of same) {
      if (homeOf(workspace, parsed, found) === home) places.push({ file: other, range: found.range, role: found.role });
    }
  }
  return places;
}

/** The file that gives a name which another file uses. */
function homeOf(
  workspace: Workspace,
  parsed: ParsedFile,
  { kind, name, role }: Pick<Occurrence, 'kind' | 'name' | 'role'>,
): string | undefined {
  if (role === 'definition') return parsed.file;
  const { file } = parsed;
  switch (kind) {
    case 'anchor':
      return file;
    case 'site':
      return siteNamed(workspace, name);
    case 'space':
      return siteModelOf(parsed.model).spaces.has(name) ? file : undefined;
    case 'point':
      return siteOfPoint(workspace, parsed, name);
    case 'kit':
    case 'log': {
      const target = resolveFile(file, name);
      return kind === 'kit' && workspace.has(target) ? target : undefined;
    }
    default:
      return workspace.kitsOf(file).find((kit) => modelIsIn(workspace, kit, kind, name));
  }
}

export function modelIsIn(workspace: Workspace, kit: string, kind: ModelKind, id: string): boolean {
  const parsed = workspace.parsed(kit);
  return parsed?.kind === 'kit' && kitModelOf(parsed.model)[MODELS_OF_KIT[kind]].has(id);
}

function siteNamed(workspace: Workspace, id: string): string | undefined {
  return workspace.files('site').find((site) => {
    const parsed = workspace.parsed(site);
    return parsed !== undefined && siteModelOf(parsed.model).header?.value.id?.value === id;
  });
}

/** The site that a visit went to; a site file is its own site. */
export function siteOf(workspace: Workspace, { file, kind, model }: ParsedFile): string | undefined {
  if (kind !== 'visit') return kind === 'site' ? file : undefined;
  const id = visitModelOf(model).header?.value.site?.value;
  return id === undefined ? undefined : siteNamed(workspace, id);
}

/** Its own site first: in a sound workspace a tag stands in no other. */
function siteOfPoint(workspace: Workspace, parsed: ParsedFile, tag: string): string | undefined {
  const gives = (site: string): boolean => {
    const model = workspace.parsed(site)?.model;
    return model !== undefined && siteModelOf(model).points.has(tag);
  };
  const own = siteOf(workspace, parsed);
  if (own !== undefined && gives(own)) return own;
  return parsed.kind === 'visit' ? workspace.files('site').find(gives) : undefined;
}

function filesThatMayUse(workspace: Workspace, kind: NameKind, home: string): readonly string[] {
  if (kind === 'space') return [home];
  if (kind === 'point' || kind === 'site') return [...workspace.files('site'), ...workspace.files('visit')];
  return [home, ...workspace.files('site').filter((site) => workspace.kitsOf(site).includes(home))];
}

/** An alias means the last anchor of its name above it. */
function placesOfAnchor(parsed: ParsedFile, at: Occurrence): readonly NamePlace[] {
  const all = occurrencesIn(parsed).filter(({ kind, name }) => kind === 'anchor' && name === at.name);
  const index = all.findIndex(({ range }) => range.start === at.range.start);
  const isAnchor = ({ role }: Occurrence): boolean => role === 'definition';
  const first = Math.max(0, all.slice(0, index + 1).findLastIndex(isAnchor));
  const next = all.findIndex((other, place) => place > index && isAnchor(other));
  const together = all.slice(first, next < 0 ? all.length : next);
  return together.map(({ range, role }) => ({ file: parsed.file, range, role }));
}
