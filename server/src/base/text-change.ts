/** What differs between two versions of a text: one stretch, found by comparing from both ends. */
export interface TextChange {
  readonly start: number;
  /** Where the changed stretch ends in the old text. */
  readonly oldEnd: number;
  /** Where it ends in the new text. */
  readonly newEnd: number;
}

/** Stretches of this many characters are compared at once: that is a memory comparison, not a loop. */
const CHUNK = 1 << 15;

/** @returns the changed stretch, or undefined where the texts are equal */
export function changeBetween(before: string, after: string): TextChange | undefined {
  if (before === after) return undefined;
  const start = sharedAtStart(before, after);
  const most = Math.min(before.length, after.length) - start;
  const tail = sharedAtEnd(before, after, most);
  return { start, oldEnd: before.length - tail, newEnd: after.length - tail };
}

function sharedAtStart(one: string, other: string): number {
  const most = Math.min(one.length, other.length);
  let at = 0;
  while (at < most && one.slice(at, at + CHUNK) === other.slice(at, at + CHUNK)) at += CHUNK;
  while (at < most && one.charCodeAt(at) === other.charCodeAt(at)) at++;
  return Math.min(at, most);
}

function sharedAtEnd(one: string, other: string, most: number): number {
  const equalChunk = (shared: number): boolean =>
    one.slice(one.length - shared - CHUNK, one.length - shared) ===
    other.slice(other.length - shared - CHUNK, other.length - shared);
  let shared = 0;
  while (shared + CHUNK <= most && equalChunk(shared)) shared += CHUNK;
  while (shared < most && one.charCodeAt(one.length - shared - 1) === other.charCodeAt(other.length - shared - 1))
    shared++;
  return shared;
}
