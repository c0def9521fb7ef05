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
  readonly tags: readonly string[];
  readonly uses: readonly ModelUse[];
}

export class WorkspaceIndex {
  readonly #parsed: (file: string) => ParsedFile | undefined;
  readonly #words = new Map<string, Words>();
  readonly #filesByTag = new Map<string, Set<string>>();
  readonly #stale = new Set<string>();

  /** @param parsed gives a file as it stands, or undefined where it is gone */
  constructor(parsed: (file: string) => ParsedFile | undefined) {
    this.#parsed = parsed;
  }

  changed(file: string): void {
    this.#stale.add(file);
  }

  /** The sites that give a tag, sorted. */
  filesWithTag(tag: string): readonly string[] {
    this.#follow();
    return [...(this.#filesByTag.get(tag) ?? [])].sort();
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
    for (const tag of this.#words.get(file)?.tags ?? []) {
      const files = this.#filesByTag.get(tag);
      files?.delete(file);
      if (files?.size === 0) this.#filesByTag.delete(tag);
    }
    this.#words.delete(file);
    const parsed = this.#parsed(file);
    if (parsed?.kind !== 'site') return;
    const site = siteModelOf(parsed.model);
    const tags = [...site.points.keys()];
    for (const tag of tags) {
      const files = this.#filesByTag.get(tag);
      if (files === undefined) this.#filesByTag.set(tag, new Set([file]));
      else files.add(file);
    }
    this.#words.set(file, { tags, uses: usesOf(parsed, site) });
  }
}

/** The URIs of the kits that a site names. */
export function kitsNamedBy({ file, model }: ParsedFile): readonly string[] {
  const kits = siteModelOf(model).header?.value.kits?.value ?? [];
  return kits.map(({ value }) => resolveFile(file, value));
}

function usesOf(parsed: ParsedFile, { header, points }: SiteModel): readonly ModelUse[] {
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
  return kitsNamedBy(parsed).flatMap((kit) => [...used].map((model): ModelUse => [kit, model]));
}
