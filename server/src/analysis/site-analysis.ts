/** The evaluation of one site with its kits: spaces, points, and the raw findings of every rule. */
import type { OtherPoint } from '../evaluate/air-temperature.ts';
import { catalogueOf, type LoadedKit, type ModelCatalogue } from '../evaluate/models.ts';
import { evaluatePoint, type PointEvaluation } from '../evaluate/point.ts';
import { type SiteSettings, siteSettings } from '../evaluate/site-settings.ts';
import { evaluateSpace, type SpaceEvaluation } from '../evaluate/space.ts';
import { kitModelOf, type SiteModel, siteModelOf } from '../model/file-models.ts';
import type { Point } from '../model/model-types.generated.ts';
import type { Entry } from '../model/read-file.ts';
import { fileKindOf } from '../model/schema.ts';
import type { KitReference, SiteView, TagPlace } from '../rules/rule.ts';
import { baseName, relativeName, resolveFile } from './file-location.ts';
import type { ParsedFile } from './parsed-file.ts';
import { type RawFinding, runRules } from './run-rules.ts';

/** What a site looks up in the rest of the workspace. */
export interface Surroundings {
  parsed(file: string): ParsedFile | undefined;
  readonly kitFiles: readonly string[];
  placesOfTag(tag: string): readonly TagPlace[];
}

export interface SiteEvaluation {
  readonly file: string;
  readonly model: SiteModel;
  readonly settings: SiteSettings;
  readonly catalogue: ModelCatalogue;
  readonly kits: readonly KitReference[];
  readonly spaces: ReadonlyMap<string, SpaceEvaluation>;
  readonly points: ReadonlyMap<string, PointEvaluation>;
}

export function evaluateSite(parsed: ParsedFile, surroundings: Surroundings): SiteEvaluation {
  const model = siteModelOf(parsed.model);
  const settings = siteSettings(model.header?.value);
  const { kits, catalogue } = kitsOf(parsed.file, model, surroundings);
  const spaces = new Map<string, SpaceEvaluation>();
  for (const [id, entry] of model.spaces) {
    if (entry.located !== undefined && !entry.broken)
      spaces.set(id, evaluateSpace(id, entry.keyOrigin, entry.located, settings));
  }
  const points = new Map<string, PointEvaluation>();
  for (const [tag, entry] of model.points) {
    const space = spaces.get(entry.located?.value.space?.value ?? '');
    const otherPoints = otherPointsOf(entry, model, spaces);
    points.set(tag, evaluatePoint({ tag, entry, settings, space, catalogue, otherPoints }));
  }
  return { file: parsed.file, model, settings, catalogue, kits, spaces, points };
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
    placesOfTag: surroundings.placesOfTag,
  };
  const readable = view.points.filter(({ entry }) => !entry.broken);
  return [
    ...runRules('file', { kind: 'site', problems: parsed.model.problems }, subject),
    ...runRules('site', view, subject),
    ...view.spaces.flatMap((space) => runRules('space', space, space.id)),
    ...readable.flatMap((point) => runRules('point', point, point.tag)),
  ];
}

function kitsOf(
  file: string,
  model: SiteModel,
  surroundings: Surroundings,
): { kits: readonly KitReference[]; catalogue: ModelCatalogue } {
  const loaded: LoadedKit[] = [];
  let complete = true;
  const kits = (model.header?.value.kits?.value ?? []).map((named): KitReference => {
    const uri = resolveFile(file, named.value);
    const others = surroundings.kitFiles.map((kit) => relativeName(file, kit));
    if (fileKindOf(named.value) !== 'kit') {
      complete = false;
      return { named, file: uri, state: 'not-a-kit-name', others };
    }
    const kit = surroundings.parsed(uri);
    if (kit === undefined) complete = false;
    else loaded.push({ file: uri, kit: kitModelOf(kit.model) });
    return { named, file: uri, state: kit === undefined ? 'missing' : 'loaded', others };
  });
  const headerUnread = model.header === undefined;
  return { kits, catalogue: catalogueOf(loaded, complete && !headerUnread) };
}

function otherPointsOf(
  entry: Entry<Point>,
  model: SiteModel,
  spaces: ReadonlyMap<string, SpaceEvaluation>,
): ReadonlyMap<string, OtherPoint> {
  const others = new Map<string, OtherPoint>();
  for (const report of entry.located?.value.reports?.value.values() ?? []) {
    const source = report.value.airTemperature?.value;
    if (source?.kind !== 'point') continue;
    const other = model.points.get(source.tag);
    const space = spaces.get(other?.located?.value.space?.value ?? '');
    others.set(source.tag, { tag: source.tag, entry: other, space });
  }
  return others;
}
