/** What a call or a file that cannot be read ends with. */
import { nearestWord } from '../base/nearest.ts';

/** A call or a file that cannot be read: said in one line on standard error, exit status 2. */
export class CallProblem extends Error {}

/** `; the nearest is check`, or nothing where no known word is near. */
export function nearestHint(typed: string, known: Iterable<string>): string {
  const near = nearestWord(typed, known);
  return near === undefined ? '' : `; the nearest is ${near.word}`;
}
