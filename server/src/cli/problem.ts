/** What a call or a file that cannot be read ends with. */
import { version } from '../../../package.json';
import { internalErrorWords } from '../base/internal-error.ts';
import { nearestWord } from '../base/nearest.ts';

/** A call or a file that cannot be read: said in one line on standard error, exit status 2. */
export class CallProblem extends Error {}

/** What is said of anything that ends a call, without a stack unless somebody asks for it. */
export function failureWords(error: unknown): string {
  if (error instanceof CallProblem) return error.message;
  return internalErrorWords(error, version, process.env['DEWRIGHT_STACK'] === '1');
}

/** `; the nearest is check`, or nothing where no known word is near. */
export function nearestHint(typed: string, known: Iterable<string>): string {
  const near = nearestWord(typed, known);
  return near === undefined ? '' : `; the nearest is ${near.word}`;
}
