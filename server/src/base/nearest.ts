/** The known word closest to a mistyped one. */
export interface Nearest {
  readonly word: string;
  /** How many letters were added, left out, changed or swapped. */
  readonly distance: number;
}

/** @returns the nearest word within a third of its length, or undefined where nothing is near */
export function nearestWord(typed: string, known: Iterable<string>): Nearest | undefined {
  let best: Nearest | undefined;
  for (const word of known) {
    const limit = Math.max(1, Math.floor(Math.max(word.length, typed.length) / 3));
    if (Math.abs(word.length - typed.length) > limit) continue;
    const distance = editDistance(typed.toLowerCase(), word.toLowerCase());
    if (distance <= limit && (best === undefined || distance < best.distance)) best = { word, distance };
  }
  return best;
}

/** Optimal string alignment distance (Damerau and Levenshtein, adjacent swaps count one). */
function editDistance(one: string, other: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: other.length + 1 }, (_, column) => column);
  for (let row = 1; row <= one.length; row++) {
    const current = [row];
    for (let column = 1; column <= other.length; column++) {
      const same = one[row - 1] === other[column - 1];
      let cost = Math.min(
        (last[column] ?? 0) + 1,
        (current[column - 1] ?? 0) + 1,
        (last[column - 1] ?? 0) + (same ? 0 : 1),
      );
      if (row > 1 && column > 1 && one[row - 1] === other[column - 2] && one[row - 2] === other[column - 1]) {
        cost = Math.min(cost, (beforeLast[column - 2] ?? 0) + 1);
      }
      current.push(cost);
    }
    beforeLast = last;
    last = current;
  }
  return last[other.length] ?? 0;
}
