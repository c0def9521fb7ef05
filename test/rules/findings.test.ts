import { describe, expect, it } from 'vitest';
import { baseName, fileUri } from '../../server/src/analysis/file-location.ts';
import type { Finding } from '../../server/src/analysis/finding.ts';
import type { Workspace } from '../../server/src/analysis/workspace.ts';
import { lineIndexOf } from '../../server/src/base/line-index.ts';
import { isKnown, showFact } from '../../server/src/evaluate/facts/fact.ts';
import { RULES } from '../../server/src/rules/registry.generated.ts';
import { besideExamples, type Fixture, fixtureOf, readMarks, workspaceOf } from './fixture.ts';
import { withoutEachKey } from './left-out.ts';

describe.each(RULES.map(({ name }) => name))('%s', (name) => {
  const fixture = fixtureOf(name);

  it('all that it tells of its examples, and what that hangs on, is written down beside them', async () => {
    const examples = fixture.files.filter((file) => /^(faulty|sound)[^.]*\.dew/.test(file));
    const told = examples.flatMap((file) => {
      const { text } = readMarks(fixture.read(file));
      const workspace = workspaceOf(fixture, file, new Map([[file, text]]));
      const findings = findingsIn(workspace, file).map((finding) => inFull(finding, fixture, file, text));
      return [file, ...findings, ...whenLeftOut(workspace, file, text)];
    });
    await expect(`${told.join('\n\n')}\n`).toMatchFileSnapshot(fixture.path('findings.txt'));
  }, 120_000);

  /** Those of the rule itself. */
  function findingsIn(workspace: Workspace, file: string): readonly Finding[] {
    const findings = workspace.analysis(fileUri(fixture.path(file)))?.findings ?? [];
    return findings.filter(({ rule }) => rule === name);
  }

  /** What becomes of the rule's findings in an example where a key of it, or of a file beside it, is left out. */
  function whenLeftOut(workspace: Workspace, file: string, text: string): readonly string[] {
    const told = (): string =>
      findingsIn(workspace, file)
        .map(({ message }) => message)
        .join('\n');
    const before = told();
    const changes = [file, ...besideExamples(fixture)].flatMap((each) => {
      const uri = fileUri(fixture.path(each));
      const whole = each === file ? text : fixture.read(each);
      const changed = withoutEachKey(whole).map(({ key, text: rest }) => {
        workspace.set(uri, rest);
        return { key: each === file ? key : `${key} in ${each}`, now: told() };
      });
      workspace.set(uri, whole);
      return changed.filter(({ now }) => now !== before);
    });
    const list = (words: string, keys: readonly { readonly key: string }[]): readonly string[] =>
      keys.length === 0 ? [] : [`${words}:\n${keys.map(({ key }) => `  ${key}`).join('\n')}`];
    return [
      ...list(
        'Silent without',
        changes.filter(({ now }) => now === ''),
      ),
      ...list(
        before === '' ? 'Speaks without' : 'Says something else without',
        changes.filter(({ now }) => now !== ''),
      ),
    ];
  }
});

/** All that is told with a finding. Of a place in a shared kit only the file is told. */
function inFull(
  { range, severity, message, subject, facts, related, fixes }: Finding,
  fixture: Fixture,
  file: string,
  text: string,
): string {
  const place = (offset: number, of = text): string => {
    const { line, character } = lineIndexOf(of).positionAt(offset);
    return `${line + 1}:${character + 1}`;
  };
  const placeIn = (name: string, offset: number): string => {
    if (name === file) return place(offset);
    return fixture.files.includes(name) ? `${name} ${place(offset, fixture.read(name))}` : name;
  };
  return [
    `${place(range.start)} ${subject}, ${severity}: ${message}`,
    ...facts.map((fact) => `  ${fact.id}: ${isKnown(fact) ? showFact(fact) : fact.missing}`),
    ...related.map((other) => `  ${placeIn(baseName(other.file), other.range.start)} ${other.message}`),
    ...fixes.map((fix) => `  ${fix.kind}: ${fix.title}`),
  ].join('\n');
}
