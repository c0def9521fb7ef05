/**
 * The one mutable place: the texts of all known files. Everything else is computed from one moment of it, kept until
 * something it depends on changes.
 */
import { siteModelOf } from '../model/file-models.ts';
import { type FileKind, fileKindOf } from '../model/schema.ts';
import type { TagPlace } from '../rules/rule.ts';
import { type Analysis, analyse, type WorkspaceFacts } from './analysis.ts';
import { resolveFile } from './file-location.ts';
import { type ParsedFile, parseSource } from './parsed-file.ts';

interface Source {
  readonly kind: FileKind;
  readonly text: string;
  parsed: ParsedFile | undefined;
}

export class Workspace {
  readonly #sources = new Map<string, Source>();
  readonly #analyses = new Map<string, Analysis>();
  #tags: ReadonlyMap<string, readonly TagPlace[]> | undefined;
  #wholeKnown = false;

  /** Sets or replaces the text of a file. A file whose name is none of ours is left out. */
  set(file: string, text: string): void {
    const kind = fileKindOf(file);
    if (kind === undefined || this.#sources.get(file)?.text === text) return;
    this.#sources.set(file, { kind, text, parsed: undefined });
    this.#changed();
  }

  remove(file: string): void {
    if (this.#sources.delete(file)) this.#changed();
  }

  /** Says that every file of the workspace has been set, so that what nothing uses can be told. */
  markWhole(): void {
    this.#wholeKnown = true;
    this.#changed();
  }

  has(file: string): boolean {
    return this.#sources.has(file);
  }

  files(kind?: FileKind): readonly string[] {
    return [...this.#sources]
      .flatMap(([file, source]) => (kind === undefined || source.kind === kind ? [file] : []))
      .sort();
  }

  parsed(file: string): ParsedFile | undefined {
    const source = this.#sources.get(file);
    if (source === undefined) return undefined;
    source.parsed ??= parseSource(file, source.kind, source.text);
    return source.parsed;
  }

  analysis(file: string): Analysis | undefined {
    const known = this.#analyses.get(file);
    if (known !== undefined) return known;
    const parsed = this.parsed(file);
    if (parsed === undefined) return undefined;
    const analysis = analyse(parsed, this.#facts());
    this.#analyses.set(file, analysis);
    return analysis;
  }

  /** The kits that a site names, whether they are known yet or not. */
  kitsOf(site: string): readonly string[] {
    const parsed = this.parsed(site);
    if (parsed?.kind !== 'site') return [];
    const kits = siteModelOf(parsed.model).header?.value.kits?.value ?? [];
    return kits.map(({ value }) => resolveFile(site, value));
  }

  #changed(): void {
    this.#analyses.clear();
    this.#tags = undefined;
  }

  #facts(): WorkspaceFacts {
    return {
      parsed: (file) => this.parsed(file),
      kitFiles: this.files('kit'),
      placesOfTag: (tag) => this.#tagPlaces().get(tag) ?? [],
      usedModels: (kit) => this.#usedModels(kit),
    };
  }

  #tagPlaces(): ReadonlyMap<string, readonly TagPlace[]> {
    if (this.#tags !== undefined) return this.#tags;
    const tags = new Map<string, TagPlace[]>();
    for (const file of this.files('site')) {
      const parsed = this.parsed(file);
      if (parsed === undefined) continue;
      for (const [tag, { keyOrigin }] of siteModelOf(parsed.model).points) {
        const places = tags.get(tag);
        if (places === undefined) tags.set(tag, [{ file, origin: keyOrigin }]);
        else places.push({ file, origin: keyOrigin });
      }
    }
    this.#tags = tags;
    return tags;
  }

  #usedModels(kit: string): ReadonlySet<string> | undefined {
    if (!this.#wholeKnown) return undefined;
    const used = new Set<string>();
    for (const site of this.files('site')) {
      if (!this.kitsOf(site).includes(kit)) continue;
      const parsed = this.parsed(site);
      if (parsed === undefined) continue;
      const { header, points } = siteModelOf(parsed.model);
      const add = (id: string | undefined): void => void (id === undefined ? undefined : used.add(id));
      add(header?.value.defaults?.value.receiver?.value);
      for (const { located } of points.values()) {
        const point = located?.value;
        add(point?.humidityProbe?.value.model?.value);
        add(point?.airTemperatureProbe?.value.model?.value);
        add(point?.transmitter?.value.model?.value);
        for (const signal of point?.signals?.value.values() ?? []) {
          if (signal.value.kind !== 'register') add(signal.value.receiver?.value);
        }
      }
    }
    return used;
  }
}
