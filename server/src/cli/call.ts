/** The words of a call, told apart. */
import { parseArgs } from 'node:util';
import { CallProblem, nearestHint } from './problem.ts';

export interface Call {
  readonly rest: readonly string[];
  readonly options: Readonly<Record<string, string>>;
  readonly flags: ReadonlySet<string>;
}

/** What a command can be called with, by name. */
export interface CallForm {
  readonly options: Readonly<Record<string, CallOption>>;
  /** What each does. */
  readonly flags: Readonly<Record<string, string>>;
}

export interface CallOption {
  /** What is written behind it: words, or a name in capitals for what is the caller's own. */
  readonly takes: string;
  readonly does: string;
}

export function readCall(words: readonly string[], form: CallForm): Call {
  const options = Object.fromEntries([
    ...Object.keys(form.options).map((name) => [name, { type: 'string' as const }]),
    ...Object.keys(form.flags).map((name) => [name, { type: 'boolean' as const }]),
  ]);
  try {
    const { values, positionals } = parseArgs({ args: [...words], options, allowPositionals: true, strict: true });
    const given = Object.entries(values);
    return {
      rest: positionals,
      options: Object.fromEntries(given.filter((entry): entry is [string, string] => typeof entry[1] === 'string')),
      flags: new Set(given.flatMap(([name, value]) => (value === true ? [name] : []))),
    };
  } catch (error) {
    throw new CallProblem(wordsOf(error, form));
  }
}

/** What Node finds wrong with an option, in our words. */
function wordsOf(error: unknown, { options, flags }: CallForm): string {
  const option = /--?[\w-]+/.exec(error instanceof Error ? error.message : '')?.[0];
  if (option === undefined) return 'the call cannot be read';
  const name = option.replace(/^--?/, '');
  if (Object.hasOwn(options, name)) return `${option}: needs a value`;
  if (Object.hasOwn(flags, name)) return `${option}: takes no value`;
  const known = [...Object.keys(options), ...Object.keys(flags)].map((each) => `--${each}`);
  return `${option}: not an option of this command${nearestHint(option, known)}`;
}

/** One of the words that an option takes. */
export function choice<Word extends string>(call: Call, name: string, words: readonly Word[], usual: Word): Word {
  const given = call.options[name];
  if (given === undefined) return usual;
  const word = words.find((candidate) => candidate === given);
  if (word === undefined) throw new CallProblem(`--${name} ${given}: one of ${words.join(', ')}`);
  return word;
}
