/** Numbers that look random and come again with their seed. */

export class Random {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** From 0 up to, but not including, 1: the mulberry32 generator. */
  share(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(this.#state ^ (this.#state >>> 15), this.#state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  }

  /** A whole number from 0 to one below the limit. */
  below(limit: number): number {
    return Math.floor(this.share() * limit);
  }

  chance(share: number): boolean {
    return this.share() < share;
  }

  pick<Item>(items: readonly Item[]): Item {
    const item = items[this.below(items.length)];
    if (item === undefined) throw new Error('there is nothing to pick from');
    return item;
  }
}
