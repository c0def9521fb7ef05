/** `dewright explain`: the page of a rule, a quantity or a key, or the list of them. */
import { explain, explainedNames } from '../features/reading/explain.ts';
import type { Call } from './call.ts';
import { CallProblem, nearestHint } from './problem.ts';

export function explainName(call: Call): number {
  const [name] = call.rest;
  const names = explainedNames();
  if (name === undefined) {
    const list = (title: string, words: readonly string[]): string =>
      `${title}\n${words.map((word) => `  ${word}`).join('\n')}\n`;
    process.stdout.write(
      [list('Rules', names.rules), list('Quantities', names.quantities), list('Keys', names.keys)].join('\n'),
    );
    return 0;
  }
  const page = explain(name);
  if (page === undefined) {
    const hint = nearestHint(name, [...names.rules, ...names.quantities, ...names.keys]);
    throw new CallProblem(`${name}: there is no rule, quantity or key of that name${hint}`);
  }
  process.stdout.write(`${page.trimEnd()}\n`);
  return 0;
}
