/** What the findings of each rule hang on: its examples with one key left out, for each key. Compared, not read. */
import { describe, expect, it } from 'vitest';
import { fileUri } from '../../server/src/analysis/file-location.ts';
import { RULES } from '../../server/src/rules/registry.generated.ts';
import { besideExamples, examplesOf, fixtureOf, ownFindings, readMarks, workspaceOf } from './fixture.ts';
import { withoutEachKey } from './left-out.ts';

interface Change {
  readonly key: string;
  /** The messages that are left. */
  readonly now: string;
}

describe.each(RULES.map(({ name }) => name))('%s', (name) => {
  const fixture = fixtureOf(name);

  it('what its examples hang on is written down beside them', async () => {
    const told = examplesOf(fixture).flatMap((file) => [file, ...whenLeftOut(file)]);
    await expect(`${told.join('\n\n')}\n`).toMatchFileSnapshot(fixture.path('left-out.txt'));
  }, 120_000);

  /** What becomes of the rule's findings in an example where a key of it, or of a file beside it, is left out. */
  function whenLeftOut(file: string): readonly string[] {
    const { text } = readMarks(fixture.read(file));
    const workspace = workspaceOf(fixture, file, new Map([[file, text]]));
    const told = (): string =>
      ownFindings(fixture, workspace, file)
        .map(({ message }) => message)
        .join('\n');
    const before = told();
    const changes = [file, ...besideExamples(fixture)].flatMap((each): readonly Change[] => {
      const uri = fileUri(fixture.path(each));
      const whole = each === file ? text : fixture.read(each);
      const changed = withoutEachKey(whole).map(({ key, text: rest }) => {
        workspace.set(uri, rest);
        return { key: each === file ? key : `${each}: ${key}`, now: told() };
      });
      workspace.set(uri, whole);
      return changed.filter(({ now }) => now !== before);
    });
    const [silent, other] = [changes.filter(({ now }) => now === ''), changes.filter(({ now }) => now !== '')];
    return [
      ...list('Silent without', silent),
      ...list(before === '' ? 'Speaks without' : 'Says something else without', other),
    ];
  }
});

/** A key that holds another one of the list goes without saying. */
function list(words: string, changes: readonly Change[]): readonly string[] {
  const keys = changes.map(({ key }) => key);
  const deepest = keys.filter((key) => !keys.some((other) => other.startsWith(`${key}.`)));
  return deepest.length === 0 ? [] : [`${words}:\n${deepest.map((key) => `  ${key}`).join('\n')}`];
}
