/** The evaluation of one site with its kits: spaces, points, and the raw findings of every rule. */

import { remembered } from '../base/remembered.ts';
import { evaluateSpace, type SpaceEvaluation } from '../evaluate/air/space.ts';
import { catalogueOf, type LoadedKit, type ModelCatalogue } from '../evaluate/equipment/models.ts';
import type { EvaluatedSite } from '../evaluate/evaluated-site.ts';
import { siteSettings } from '../evaluate/facts/site-settings.ts';
import { evaluatePoint, type PointEvaluation } from '../evaluate/point.ts';
import type { OtherPoint } from '../evaluate/resolved/air-temperature-source.ts';
import type { PointInputs } from '../evaluate/resolved/resolved-point.ts';
import { readingsByTag, sameReadings, type VisitOfSite } from '../evaluate/resolved/visit-reading.ts';
import { kitModelOf, type SiteModel, siteModelOf } from '../model/file-models.ts';
import type { Point } from '../model/model-types.generated.ts';
import type { Entry, FileModel } from '../model/read-file.ts';
import { fileKindOf } from '../model/schema.ts';
import type { KitReference, OtherKit, SiteView, TagPlace } from '../rules/rule.ts';
import { RULE_NAMES } from '../rules/rule-names.ts';
import { baseName, relativeName, resolveFile } from './file-location.ts';
import type { ParsedFile } from './parsed-file.ts';
import { type RawFinding, runRules } from './run-rules.ts';

/** What a site looks up in the rest of the workspace. */
export interface Surroundings {
  /** The present day, `YYYY-MM-DD`. */
  readonly today: string;
  parsed(file: string): ParsedFile | undefined;
  readonly kitFiles: readonly string[];
  /** The tags of a site that another gives too. */
  sharedTagsOf(site: string): readonly string[];
  placesOfTag(tag: string): readonly TagPlace[];
  /** The visits to a site, by the URI of its file. */
  visitsTo(site: string): readonly VisitOfSite[];
}

export interface SiteEvaluation extends EvaluatedSite {
  readonly kits: readonly KitReference[];
  /** The models of the kits that the catalogue was joined from. */
  readonly kitFiles: readonly FileModel[];
}

/** @param before an earlier evaluation: what depends on nothing that has changed is taken from it */
export function evaluateSite(
  parsed: ParsedFile,
  surroundings: Surroundings,
  before: SiteEvaluation | undefined,
): SiteEvaluation {
  const model = siteModelOf(parsed.model);
  const { today } = surroundings;
  const sameSettings = before?.model.header === model.header && before?.settings.today === today;
  const settings = before !== undefined && sameSettings ? before.settings : siteSettings(model.header, today);
  const { kits, kitFiles, catalogue } = kitsOf(parsed.file, model, surroundings, before);
  const spaces = new Map<string, SpaceEvaluation>();
  for (const [id, entry] of model.spaces) {
    if (entry.located === undefined || entry.broken) continue;
    const known = before?.spaces.get(id);
    const same = known?.located === entry.located && known.settings === settings;
    spaces.set(id, same ? known : evaluateSpace(id, entry.keyOrigin, entry.located, settings));
  }
  const visits = surroundings.visitsTo(parsed.file);
  const readings = readingsByTag(visits, settings.coverage.value);
  const points = new Map<string, PointEvaluation>();
  for (const [tag, entry] of model.points) {
    const space = spaces.get(entry.located?.value.space?.value ?? '');
    const otherPoints = otherPointsOf(entry, model, spaces);
    const inputs = { tag, entry, settings, space, catalogue, otherPoints, readings: readings.get(tag) ?? [] };
    const known = before?.points.get(tag);
    points.set(tag, known !== undefined && sameInputs(known, inputs) ? known : evaluatePoint(inputs));
  }
  return { file: parsed.file, model, settings, catalogue, kits, kitFiles, spaces, points, visits };
}

function sameInputs(one: PointInputs, other: PointInputs): boolean {
  return (
    one.entry === other.entry &&
    one.settings === other.settings &&
    one.space === other.space &&
    one.catalogue === other.catalogue &&
    sameReadings(one.readings, other.readings) &&
    (one.otherPoints === other.otherPoints || sameOthers(one.otherPoints, other.otherPoints))
  );
}

function sameOthers(one: PointInputs['otherPoints'], other: PointInputs['otherPoints']): boolean {
  if (one.size !== other.size) return false;
  return [...one].every(([tag, point]) => {
    const now = other.get(tag);
    return now !== undefined && now.entry === point.entry && now.space === point.space;
  });
}

/** The site with every rule run over it. */
export function findInSite(
  parsed: ParsedFile,
  site: SiteEvaluation,
  surroundings: Surroundings,
): readonly RawFinding[] {
  const subject = site.settings.id ?? baseName(site.file);
  const view: SiteView = {
    file: site.file,
    model: site.model,
    settings: site.settings,
    catalogue: site.catalogue,
    kits: site.kits,
    spaces: [...site.spaces.values()],
    points: [...site.points.values()],
    ruleNames: RULE_NAMES,
    sharedTags: surroundings.sharedTagsOf(site.file),
    placesOfTag: surroundings.placesOfTag,
    otherKits: () => otherKitsOf(site, surroundings),
  };
  return [
    ...runRules('file', { kind: 'site', problems: parsed.model.problems }, subject),
    ...runRules('site', view, subject),
    ...view.spaces.flatMap(findInSpace),
    ...view.points.flatMap((point) => (point.entry.broken ? [] : findInPoint(point))),
  ];
}

function otherKitsOf({ file, kits }: SiteEvaluation, { kitFiles, parsed }: Surroundings): readonly OtherKit[] {
  const others = kitFiles.filter((kit) => !kits.some((named) => named.file === kit));
  return others.flatMap((kit) => {
    const read = parsed(kit);
    return read === undefined ? [] : { name: relativeName(file, kit), kit: kitModelOf(read.model) };
  });
}

/** What the rules find in a space or a point follows from its evaluation alone, and is found once. */
const findInSpace = remembered((space: SpaceEvaluation) => runRules('space', space, space.id));
const findInPoint = remembered((point: PointEvaluation) => runRules('point', point, point.tag));

interface Kits {
  readonly kits: readonly KitReference[];
  readonly kitFiles: readonly FileModel[];
  readonly catalogue: ModelCatalogue;
}

function kitsOf(file: string, model: SiteModel, surroundings: Surroundings, before: SiteEvaluation | undefined): Kits {
  const loaded: LoadedKit[] = [];
  const kitFiles: FileModel[] = [];
  let complete = model.header !== undefined && !model.brokenKeys.has('site');
  const kits = (model.header?.value.kits?.value ?? []).map((named): KitReference => {
    const uri = resolveFile(file, named.value);
    const kit = fileKindOf(named.value) === 'kit' ? surroundings.parsed(uri) : undefined;
    if (kit === undefined) {
      complete = false;
      return { named, file: uri, state: fileKindOf(named.value) === 'kit' ? 'missing' : 'not-a-kit-name' };
    }
    const read = kitModelOf(kit.model);
    if (!kitFiles.includes(kit.model)) {
      loaded.push({ file: uri, kit: read });
      kitFiles.push(kit.model);
    }
    if (kit.model.brokenKeys.size > 0) complete = false;
    return { named, file: uri, state: 'loaded', kit: read };
  });
  const same =
    before?.catalogue.complete === complete &&
    before.kitFiles.length === kitFiles.length &&
    before.kitFiles.every((kit, index) => kit === kitFiles[index]);
  return { kits, kitFiles, catalogue: same ? before.catalogue : catalogueOf(loaded, complete) };
}

const NO_OTHER_POINTS: ReadonlyMap<string, OtherPoint> = new Map();

/** The tags of the points whose air-temperature probes a point names. */
const tagsNamedBy = remembered((point: Entry<Point>): readonly string[] =>
  [...(point.located?.value.reports?.value.values() ?? [])].flatMap(({ value }) => {
    const source = value.airTemperature?.value;
    return source?.kind === 'point' ? [source.tag] : [];
  }),
);

function otherPointsOf(
  point: Entry<Point>,
  { points }: SiteModel,
  spaces: ReadonlyMap<string, SpaceEvaluation>,
): ReadonlyMap<string, OtherPoint> {
  const tags = tagsNamedBy(point);
  if (tags.length === 0) return NO_OTHER_POINTS;
  return new Map(
    tags.map((tag) => {
      const entry = points.get(tag);
      return [tag, { tag, entry, space: spaces.get(entry?.located?.value.space?.value ?? '') }];
    }),
  );
}
