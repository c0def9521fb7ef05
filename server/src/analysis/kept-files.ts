/** Which files are kept parsed: while they need more room than there is, those used longest ago go first. */
export class KeptFiles {
  readonly #room: number;
  /** The lengths of the texts, of the file used longest ago first. */
  readonly #lengths = new Map<string, number>();
  #used = 0;

  /** @param room in characters */
  constructor(room: number) {
    this.#room = room;
  }

  /** A file was just used. */
  use(file: string, length: number): void {
    this.forget(file);
    this.#lengths.set(file, length);
    this.#used += length;
  }

  forget(file: string): void {
    this.#used -= this.#lengths.get(file) ?? 0;
    this.#lengths.delete(file);
  }

  /** Forgets what is beyond the room, and says what that was; never the file that is wanted now or was used after it. */
  makeRoom(wanted: string): readonly string[] {
    const forgotten: string[] = [];
    for (const oldest of this.#lengths.keys()) {
      if (this.#used <= this.#room || oldest === wanted) break;
      this.forget(oldest);
      forgotten.push(oldest);
    }
    return forgotten;
  }
}
