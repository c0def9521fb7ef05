import { describe, expect, it } from 'vitest';
import { baseName } from '../../server/src/analysis/file-location.ts';
import type { Finding } from '../../server/src/analysis/finding.ts';
import { lineIndexOf } from '../../server/src/base/line-index.ts';
import { isKnown, showFact } from '../../server/src/evaluate/facts/fact.ts';
import { RULES } from '../../server/src/rules/registry.generated.ts';
import { examplesOf, type Fixture, fixtureOf, ownFindings, readMarks, workspaceOf } from './fixture.ts';

describe.each(RULES.map(({ name }) => name))('%s', (name) => {
  const fixture = fixtureOf(name);

  it('all that it tells of its examples is written down beside them', async () => {
    const told = examplesOf(fixture).flatMap((file) => {
      const { text } = readMarks(fixture.read(file));
      const workspace = workspaceOf(fixture, file, new Map([[file, text]]));
      const findings = ownFindings(fixture, workspace, file).map((finding) => inFull(finding, fixture, file, text));
      return [file, ...findings];
    });
    await expect(`${told.join('\n\n')}\n`).toMatchFileSnapshot(fixture.path('findings.txt'));
  });
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
