/**
 * The one mutable place: the texts of all known files. Everything else is computed from one moment of it, on demand,
 * and kept while nothing it depends on changes.
 */
import { remembered } from '../base/remembered.ts';
import { type SiteModel, siteModelOf } from '../model/file-models.ts';
import { type FileKind, fileKindOf } from '../model/schema.ts';
import { type Analysis, analyse, type WorkspaceFacts } from './analysis.ts';
import { resolveFile } from './file-location.ts';
import { type ParsedFile, parseSource } from './parsed-file.ts';
import { TagIndex } from './tag-index.ts';
import { systemDay } from './today.ts';

interface Source {
  readonly kind: FileKind;
  text: string;
  /** The last version that was parsed; stale where its text is not the text. */
  parsed: ParsedFile | undefined;
  analysis: Analysis | undefined;
  /** The moment that the analysis was made at. */
  analysedAt: number;
}

/** A model that a site uses, with the URI of a kit that the site names. */
export type ModelUse = readonly [kit: string, model: string];

export interface WorkspaceOptions {
  /** The present day, `YYYY-MM-DD`. It is asked before every analysis, so that a new day needs no restart. */
  readonly today?: () => string;
}

export class Workspace {
  readonly #today: () => string;
  #day = '';
  readonly #sources = new Map<string, Source>();
  readonly #tags = new TagIndex();
  #moment = 0;
  /** Which sites use which models, by kit; undefined while not every site is known. */
  #usesElsewhere: readonly ModelUse[] | undefined;

  constructor({ today = systemDay }: WorkspaceOptions = {}) {
    this.#today = today;
  }

  /** Sets or replaces the text of a file. A file whose name is none of ours is left out. */
  set(file: string, text: string): void {
    const kind = fileKindOf(file);
    const known = this.#sources.get(file);
    if (kind === undefined || known?.text === text) return;
    this.#moment++;
    if (known === undefined)
      this.#sources.set(file, { kind, text, parsed: undefined, analysis: undefined, analysedAt: 0 });
    else known.text = text;
    this.#tags.changed(file);
  }

  remove(file: string): void {
    if (!this.#sources.delete(file)) return;
    this.#moment++;
    this.#tags.changed(file);
  }

  /**
   * Says that every file of the workspace has been set, so that what nothing uses can be told.
   * @param elsewhere what sites use that are known to others only
   */
  markWhole(elsewhere: readonly ModelUse[] = []): void {
    this.#usesElsewhere = elsewhere;
    this.#moment++;
  }

  /** Which models the sites of this workspace use, by the kit that they name for it. */
  uses(): readonly ModelUse[] {
    return this.files('site').flatMap((site) => {
      const parsed = this.parsed(site);
      if (parsed === undefined) return [];
      const models = [...modelsUsedBy(siteModelOf(parsed.model))];
      return kitsNamedBy(parsed).flatMap((kit) => models.map((model): ModelUse => [kit, model]));
    });
  }

  has(file: string): boolean {
    return this.#sources.has(file);
  }

  files(kind?: FileKind): readonly string[] {
    const wanted = [...this.#sources].flatMap(([file, source]) =>
      kind === undefined || source.kind === kind ? [file] : [],
    );
    return wanted.sort();
  }

  parsed(file: string): ParsedFile | undefined {
    const source = this.#sources.get(file);
    if (source === undefined) return undefined;
    if (source.parsed?.text !== source.text) source.parsed = parseSource(file, source.kind, source.text, source.parsed);
    return source.parsed;
  }

  analysis(file: string): Analysis | undefined {
    const source = this.#sources.get(file);
    const parsed = this.parsed(file);
    if (source === undefined || parsed === undefined) return undefined;
    this.#askDay();
    if (source.analysis === undefined || source.analysedAt !== this.#moment) {
      source.analysis = analyse(parsed, this.#facts(), source.analysis);
      source.analysedAt = this.#moment;
    }
    return source.analysis;
  }

  /** The kits that a site names, whether they are known yet or not. */
  kitsOf(site: string): readonly string[] {
    const parsed = this.parsed(site);
    return parsed?.kind === 'site' ? kitsNamedBy(parsed) : [];
  }

  #askDay(): void {
    const day = this.#today();
    if (day === this.#day) return;
    this.#day = day;
    this.#moment++;
  }

  #facts(): WorkspaceFacts {
    return {
      today: this.#day,
      parsed: (file) => this.parsed(file),
      kitFiles: this.files('kit'),
      placesOfTag: (tag) => this.#tags.placesOf(tag, (file) => this.parsed(file)),
      usedModels: (kit) => this.#usedModels(kit),
    };
  }

  #usedModels(kit: string): ReadonlySet<string> | undefined {
    if (this.#usesElsewhere === undefined) return undefined;
    const all = [...this.uses(), ...this.#usesElsewhere];
    return new Set(all.flatMap(([of, model]) => (of === kit ? [model] : [])));
  }
}

const kitsNamedBy = remembered(({ file, model }: ParsedFile): readonly string[] => {
  const kits = siteModelOf(model).header?.value.kits?.value ?? [];
  return kits.map(({ value }) => resolveFile(file, value));
});

const modelsUsedBy = remembered(({ header, points }: SiteModel): ReadonlySet<string> => {
  const used = new Set<string>();
  const add = (id: string | undefined): void => {
    if (id !== undefined) used.add(id);
  };
  add(header?.value.defaults?.value.receiver?.value);
  for (const { located } of points.values()) {
    const point = located?.value;
    add(point?.humidityProbe?.value.model?.value);
    add(point?.airTemperatureProbe?.value.model?.value);
    add(point?.transmitter?.value.model?.value);
    for (const { value } of point?.signals?.value.values() ?? []) {
      if (value.kind !== 'register') add(value.receiver?.value);
    }
  }
  return used;
});
