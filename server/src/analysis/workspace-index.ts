/**
 * What the files of a workspace give to and take from each other: tags, models, and the ids by which visits name their
 * sites. It follows them by difference, so that only a changed file is looked at again, and holds words alone, so that
 * it keeps no parsed file in memory.
 */
import { remembered } from '../base/remembered.ts';
import { type SiteModel, siteModelOf, visitModelOf } from '../model/file-models.ts';
import type { Point } from '../model/model-types.generated.ts';
import type { Entry } from '../model/read-file.ts';
import { resolveFile } from './file-location.ts';
import { FilesByWord } from './files-by-word.ts';
import type { ParsedFile } from './parsed-file.ts';

/** A model that a site uses, with the URI of a kit that the site names. */
export type ModelUse = readonly [kit: string, model: string];

/** What one file says that concerns others. */
export interface FileWords {
  /** The URIs of the kits that a site names. */
  readonly kits: readonly string[];
  readonly tags: readonly string[];
  readonly uses: readonly ModelUse[];
  /** The id of a site. */
  readonly siteId: string | undefined;
  /** The id of the site that a visit went to. */
  readonly visited: string | undefined;
}

export class WorkspaceIndex {
  readonly #parsed: (file: string) => ParsedFile | undefined;
  readonly #words = new Map<string, FileWords>();
  readonly #byTag = new FilesByWord();
  readonly #bySiteId = new FilesByWord();
  readonly #byVisited = new FilesByWord();
  readonly #sharedTags = new Map<string, readonly string[]>();
  readonly #stale = new Set<string>();
  #revision = 0;

  /** @param parsed gives a file as it stands, or undefined where it is gone */
  constructor(parsed: (file: string) => ParsedFile | undefined) {
    this.#parsed = parsed;
  }

  changed(file: string): void {
    this.#stale.add(file);
  }

  /** Changes where the words of any file do: while it stands, a file says nothing new to the others. */
  revision(): number {
    this.#follow();
    return this.#revision;
  }

  /** Undefined for a kit, and for what is not known. */
  wordsOf(file: string): FileWords | undefined {
    this.#follow();
    return this.#words.get(file);
  }

  /** The sites that give a tag, sorted. */
  filesWithTag(tag: string): readonly string[] {
    this.#follow();
    return this.#byTag.of(tag);
  }

  /** The tags of a site that another gives too. They are looked for again only where words have changed. */
  sharedTagsOf(file: string): readonly string[] {
    this.#follow();
    const known = this.#sharedTags.get(file);
    if (known !== undefined) return known;
    const shared = (this.wordsOf(file)?.tags ?? []).filter((tag) => this.#byTag.isShared(tag));
    this.#sharedTags.set(file, shared);
    return shared;
  }

  /** The other sites that give a tag of this one. */
  filesSharingTags(file: string): readonly string[] {
    const sharing = new Set(this.sharedTagsOf(file).flatMap((tag) => this.#byTag.of(tag)));
    sharing.delete(file);
    return [...sharing].sort();
  }

  /** The sites that have an id, sorted. */
  sitesWithId(id: string): readonly string[] {
    this.#follow();
    return this.#bySiteId.of(id);
  }

  siteIds(): readonly string[] {
    this.#follow();
    return this.#bySiteId.words();
  }

  /** The sites that a visit may have gone to. */
  sitesOf(visit: string): readonly string[] {
    const id = this.wordsOf(visit)?.visited;
    return id === undefined ? [] : this.#bySiteId.of(id);
  }

  /** The visits to a site, sorted; none where another site has its id, so that nobody can tell whose they are. */
  visitsTo(site: string): readonly string[] {
    const id = this.wordsOf(site)?.siteId;
    return id === undefined || this.#bySiteId.of(id).length > 1 ? [] : this.#byVisited.of(id);
  }

  uses(): readonly ModelUse[] {
    this.#follow();
    return [...this.#words.values()].flatMap(({ uses }) => uses);
  }

  #follow(): void {
    for (const file of this.#stale) this.#update(file);
    this.#stale.clear();
  }

  #update(file: string): void {
    const before = this.#words.get(file);
    const now = wordsIn(this.#parsed(file));
    if (before === undefined && now === undefined) return;
    if (now === undefined) this.#words.delete(file);
    else this.#words.set(file, now);
    if (JSON.stringify(before) === JSON.stringify(now)) return;
    this.#revision++;
    this.#sharedTags.clear();
    this.#byTag.change(file, before?.tags ?? [], now?.tags ?? []);
    this.#bySiteId.change(file, listed(before?.siteId), listed(now?.siteId));
    this.#byVisited.change(file, listed(before?.visited), listed(now?.visited));
  }
}

function listed(word: string | undefined): readonly string[] {
  return word === undefined ? [] : [word];
}

/** Undefined for a kit: it only takes. */
function wordsIn(parsed: ParsedFile | undefined): FileWords | undefined {
  if (parsed?.kind === 'visit') {
    const visited = visitModelOf(parsed.model).header?.value.site?.value;
    return { kits: [], tags: [], uses: [], siteId: undefined, visited };
  }
  if (parsed?.kind !== 'site') return undefined;
  const site = siteModelOf(parsed.model);
  const { header, points } = site;
  const kits = (header?.value.kits?.value ?? []).map(({ value }) => resolveFile(parsed.file, value));
  const models = modelsUsedBy(site);
  return {
    kits,
    tags: [...points.keys()],
    uses: kits.flatMap((kit) => [...models].map((model): ModelUse => [kit, model])),
    siteId: header?.value.id?.value,
    visited: undefined,
  };
}

function modelsUsedBy({ header, points }: SiteModel): ReadonlySet<string> {
  const receiver = header?.value.defaults?.value.receiver?.value;
  const used = new Set<string>(receiver === undefined ? [] : [receiver]);
  for (const point of points.values()) for (const model of modelsOfPoint(point)) used.add(model);
  return used;
}

const modelsOfPoint = remembered(({ located }: Entry<Point>): readonly string[] => {
  const point = located?.value;
  const signals = [...(point?.signals?.value.values() ?? [])];
  const named = [
    point?.humidityProbe?.value.model,
    point?.airTemperatureProbe?.value.model,
    point?.transmitter?.value.model,
    ...signals.map(({ value }) => (value.kind === 'register' ? undefined : value.receiver)),
  ];
  return named.flatMap((model) => model?.value ?? []);
});
