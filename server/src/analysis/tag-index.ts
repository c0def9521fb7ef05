/** Where each tag of the workspace is given. Follows the files by difference: only a changed file is looked at again. */
import { siteModelOf } from '../model/file-models.ts';
import type { TagPlace } from '../rules/rule.ts';
import type { Origin } from '../syntax/nodes.ts';
import type { ParsedFile } from './parsed-file.ts';

export class TagIndex {
  /** By tag, then by file. */
  readonly #places = new Map<string, Map<string, Origin>>();
  readonly #tagsOf = new Map<string, readonly string[]>();
  readonly #stale = new Set<string>();

  changed(file: string): void {
    this.#stale.add(file);
  }

  /** @param parsed gives a file as it stands, or undefined where it is gone */
  placesOf(tag: string, parsed: (file: string) => ParsedFile | undefined): readonly TagPlace[] {
    for (const file of this.#stale) this.#update(file, parsed(file));
    this.#stale.clear();
    const places = [...(this.#places.get(tag) ?? [])].map(([file, origin]) => ({ file, origin }));
    return places.sort((one, other) => (one.file < other.file ? -1 : 1));
  }

  #update(file: string, parsed: ParsedFile | undefined): void {
    for (const tag of this.#tagsOf.get(file) ?? []) {
      const places = this.#places.get(tag);
      places?.delete(file);
      if (places?.size === 0) this.#places.delete(tag);
    }
    this.#tagsOf.delete(file);
    if (parsed?.kind !== 'site') return;
    const { points } = siteModelOf(parsed.model);
    for (const [tag, { keyOrigin }] of points) {
      const places = this.#places.get(tag) ?? new Map<string, Origin>();
      places.set(file, keyOrigin);
      this.#places.set(tag, places);
    }
    this.#tagsOf.set(file, [...points.keys()]);
  }
}
