/** Which files say a word, followed by difference. */

export class FilesByWord {
  readonly #files = new Map<string, Set<string>>();

  /** The files that say a word, sorted. */
  of(word: string): readonly string[] {
    return [...(this.#files.get(word) ?? [])].sort();
  }

  /** True where more than one file says it. */
  isShared(word: string): boolean {
    return (this.#files.get(word)?.size ?? 0) > 1;
  }

  /** All words, sorted. */
  words(): readonly string[] {
    return [...this.#files.keys()].sort();
  }

  change(file: string, before: readonly string[], now: readonly string[]): void {
    for (const word of before) {
      const files = this.#files.get(word);
      files?.delete(file);
      if (files?.size === 0) this.#files.delete(word);
    }
    for (const word of now) {
      const files = this.#files.get(word);
      if (files === undefined) this.#files.set(word, new Set([file]));
      else files.add(file);
    }
  }
}
