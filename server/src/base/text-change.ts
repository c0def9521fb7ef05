/** What differs between two versions of a text: one stretch, found by comparing from both ends. */
export interface TextChange {
  readonly start: number;
  /** Where the changed stretch ends in the old text. */
  readonly oldEnd: number;
  /** Where it ends in the new text. */
  readonly newEnd: number;
}

/** @returns the changed stretch, or undefined where the texts are equal */
export function changeBetween(before: string, after: string): TextChange | undefined {
  if (before === after) return undefined;
  const most = Math.min(before.length, after.length);
  const start = longestShared(most, (from, to) => before.slice(from, to) === after.slice(from, to));
  const tail = longestShared(
    most - start,
    (from, to) =>
      before.slice(before.length - to, before.length - from) === after.slice(after.length - to, after.length - from),
  );
  return { start, oldEnd: before.length - tail, newEnd: after.length - tail };
}

/** Long stretches are compared at once, which is a memory comparison, and shorter ones where they differ. */
const LONGEST_STRETCH = 1 << 15;

/** How many characters are equal, counted from one end. */
function longestShared(most: number, isEqual: (from: number, to: number) => boolean): number {
  let shared = 0;
  for (let stretch = LONGEST_STRETCH; stretch >= 1; stretch /= 2) {
    while (shared + stretch <= most && isEqual(shared, shared + stretch)) shared += stretch;
  }
  return shared;
}
