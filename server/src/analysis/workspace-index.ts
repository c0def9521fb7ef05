/**
 * What the files of a workspace give to and take from each other: tags and models. It follows them by difference, so
 * that only a changed file is looked at again, and holds words alone, so that it keeps no parsed file in memory.
 */
import { type SiteModel, siteModelOf } from '../model/file-models.ts';
import { resolveFile } from './file-location.ts';
import type { ParsedFile } from './parsed-file.ts';

/** A model that a site uses, with the URI of a kit that the site names. */
export type ModelUse = readonly [kit: string, model: string];

interface Words {
  readonly kits: readonly string[];
  readonly tags: readonly string[];
  readonly uses: readonly ModelUse[];
}

export class WorkspaceIndex {
  readonly #parsed: (file: string) => ParsedFile | undefined;
  readonly #words = new Map<string, Words>();
  readonly #filesByTag = new Map<string, Set<string>>();
  readonly #stale = new Set<string>();
  #revision = 0;

  /** @param parsed gives a file as it stands, or undefined where it is gone */
  constructor(parsed: (file: string) => ParsedFile | undefined) {
    this.#parsed = parsed;
  }

  changed(file: string): void {
    this.#stale.add(file);
  }

  /** Changes where the tags or uses of any file do: while it stands, a file says nothing new to the others. */
  revision(): number {
    this.#follow();
    return this.#revision;
  }

  /** The URIs of the kits that a site names. */
  kitsOf(site: string): readonly string[] {
    this.#follow();
    return this.#words.get(site)?.kits ?? [];
  }

  /** The sites that give a tag, sorted. */
  filesWithTag(tag: string): readonly string[] {
    this.#follow();
    return [...(this.#filesByTag.get(tag) ?? [])].sort();
  }

  /** The other sites that give a tag of this one. */
  filesSharingTags(file: string): readonly string[] {
    this.#follow();
    const sharing = new Set<string>();
    for (const tag of this.#words.get(file)?.tags ?? []) {
      const files = this.#filesByTag.get(tag);
      if (files !== undefined && files.size > 1) for (const other of files) sharing.add(other);
    }
    sharing.delete(file);
    return [...sharing].sort();
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
    const now = wordsOf(this.#parsed(file));
    if (before === undefined && now === undefined) return;
    if (now === undefined) this.#words.delete(file);
    else this.#words.set(file, now);
    if (JSON.stringify(before) === JSON.stringify(now)) return;
    this.#revision++;
    for (const tag of before?.tags ?? []) {
      const files = this.#filesByTag.get(tag);
      files?.delete(file);
      if (files?.size === 0) this.#filesByTag.delete(tag);
    }
    for (const tag of now?.tags ?? []) {
      const files = this.#filesByTag.get(tag);
      if (files === undefined) this.#filesByTag.set(tag, new Set([file]));
      else files.add(file);
    }
  }
}

/** Undefined for what is no site. */
function wordsOf(parsed: ParsedFile | undefined): Words | undefined {
  if (parsed?.kind !== 'site') return undefined;
  const { header, points } = siteModelOf(parsed.model);
  const kits = (header?.value.kits?.value ?? []).map(({ value }) => resolveFile(parsed.file, value));
  const models = modelsUsedBy(siteModelOf(parsed.model));
  return {
    kits,
    tags: [...points.keys()],
    uses: kits.flatMap((kit) => [...models].map((model): ModelUse => [kit, model])),
  };
}

function modelsUsedBy({ header, points }: SiteModel): ReadonlySet<string> {
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
}
