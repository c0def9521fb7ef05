/** Errors of the program itself: what a report of one needs, in one line. */

/** An error that was met while a file was looked at. */
export class InternalError extends Error {
  /** @param file its URI or path */
  constructor(
    readonly file: string,
    override readonly cause: unknown,
  ) {
    super(`${messageOf(cause)}, while looking at ${file}`);
  }
}

/** Does something with a file; an error of the program itself tells then which file that was. */
export function lookingAt<Result>(file: string, look: () => Result): Result {
  try {
    return look();
  } catch (error) {
    throw error instanceof InternalError ? error : new InternalError(file, error);
  }
}

/**
 * What a person is told: what happened, of which version, at which file, and how to see where in the program.
 * @param showsStack as the variable `DEWRIGHT_STACK` asks; the stack then follows in lines of its own
 */
export function internalErrorWords(error: unknown, version: string, showsStack: boolean): string {
  const words = `something went wrong in the program itself (version ${version}): ${messageOf(error)}; please report it`;
  if (!showsStack) return `${words}. With DEWRIGHT_STACK=1 it shows where.`;
  const origin = error instanceof InternalError ? error.cause : error;
  return `${words}.\n${origin instanceof Error ? origin.stack : ''}`;
}

function messageOf(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  return message.replaceAll(/\s+/g, ' ').trim();
}
