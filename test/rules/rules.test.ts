import { describe, expect, it } from 'vitest';
import { baseName, fileUri } from '../../server/src/analysis/file-location.ts';
import type { Finding } from '../../server/src/analysis/finding.ts';
import { lineIndexOf } from '../../server/src/base/line-index.ts';
import { applyEdits } from '../../server/src/base/text-range.ts';
import { isKnown, showFact } from '../../server/src/evaluate/fact.ts';
import { RULES } from '../../server/src/rules/registry.generated.ts';
import { type Expected, findingsOf, fixtureFolders, fixtureOf, readMarks, workspaceOf } from './fixture.ts';
import { withoutEachKey } from './left-out.ts';

it('every rule has its fixture, and every fixture its rule', () => {
  expect(fixtureFolders().toSorted()).toEqual(RULES.map(({ name }) => name).toSorted());
});

describe.each(RULES.map((rule) => [rule.name, rule] as const))('%s', (name, rule) => {
  const fixture = fixtureOf(name);
  const faulty = fixture.files.filter((file) => /^faulty[^.]*\.dew/.test(file));
  const sound = fixture.files.filter((file) => /^sound[^.]*\.dew/.test(file));

  it('has a faulty and a sound example', () => {
    expect(faulty.length).toBeGreaterThan(0);
    expect(sound.length).toBeGreaterThan(0);
  });

  it.each(faulty)('%s has exactly the findings marked', (file) => {
    const { text, expected } = readMarks(fixture.read(file));
    expect(expected.some((mark) => mark.rule === name)).toBe(true);
    const found = findingsOf(fixture, file, new Map([[file, text]])).map((finding) => asMark(finding, text));
    const worded = new Set(expected.filter(({ message }) => message !== undefined).map(placeOf));
    const compared = found.map(
      ({ message = '', ...mark }): Expected => (worded.has(placeOf(mark)) ? { ...mark, message } : mark),
    );
    expect(compared.toSorted(byPlace)).toEqual(expected.toSorted(byPlace));
  });

  it.each(sound)('%s is silent for every rule', (file) => {
    const findings = findingsOf(fixture, file, new Map());
    expect(findings.map((finding) => asMark(finding, fixture.read(file)))).toEqual([]);
  });

  it.each(faulty)('%s is mended by the first fix as its fixed twin shows', (file) => {
    const texts = new Map([[file, readMarks(fixture.read(file)).text]]);
    const fixes = findingsOf(fixture, file, texts).flatMap((finding) =>
      finding.rule === name ? finding.fixes.slice(0, 1) : [],
    );
    expect(fixes.every(({ kind }) => rule.fixes.includes(kind))).toBe(true);
    const edits = fixes.flatMap((fix) => fix.edits);
    const edited = [...new Set(edits.map((edit) => edit.file))].map(baseName);
    if (!edited.includes(file)) expect(fixture.files).not.toContain(twinOf(file));
    if (fixes.length === 0) return;
    for (const each of edited) {
      const own = edits.filter((edit) => edit.file === fileUri(fixture.path(each)));
      texts.set(each, applyEdits(texts.get(each) ?? fixture.read(each), own));
      expect(texts.get(each)).toBe(fixture.read(twinOf(each)));
    }
    expect(findingsOf(fixture, file, texts).filter((finding) => finding.rule === name)).toEqual([]);
  });

  it('all that is told with its findings, and what they need, is written down beside its examples', async () => {
    const told = faulty.flatMap((file) => {
      const { text } = readMarks(fixture.read(file));
      const findings = findingsOf(fixture, file, new Map([[file, text]])).filter((finding) => finding.rule === name);
      return [file, ...findings.map((finding) => inFull(finding, file, text)), ...needed(file, text)];
    });
    await expect(`${told.join('\n\n')}\n`).toMatchFileSnapshot(fixture.path('findings.txt'));
  });

  /** Without which keys of the example the rule is silent, and without which it says something else. */
  function needed(file: string, text: string): readonly string[] {
    const uri = fileUri(fixture.path(file));
    const workspace = workspaceOf(fixture, file, new Map());
    const told = (example: string): string => {
      workspace.set(uri, example);
      const findings = workspace.analysis(uri)?.findings ?? [];
      return findings.flatMap(({ rule, message }) => (rule === name ? [message] : [])).join('\n');
    };
    const before = told(text);
    const without = withoutEachKey(text).map(({ key, text: rest }) => ({ key, now: told(rest) }));
    const list = (words: string, keys: readonly { readonly key: string }[]): readonly string[] =>
      keys.length === 0 ? [] : [`${words}:\n${keys.map(({ key }) => `  ${key}`).join('\n')}`];
    return [
      ...list(
        'Silent without',
        without.filter(({ now }) => now === ''),
      ),
      ...list(
        'Says something else without',
        without.filter(({ now }) => now !== '' && now !== before),
      ),
    ];
  }

  it('says what is wrong in sentences', () => {
    for (const file of faulty) {
      const { text } = readMarks(fixture.read(file));
      for (const { message, rule: found } of findingsOf(fixture, file, new Map([[file, text]]))) {
        if (found === name) expect(message).toMatch(/^[A-Z“0-9].*[.]$/);
      }
    }
  });
});

function twinOf(file: string): string {
  return file.replace('.dew', '.fixed.dew');
}

function asMark({ range, severity, rule, message }: Finding, text: string): Expected {
  const lines = lineIndexOf(text);
  const [from, to] = [lines.positionAt(range.start), lines.positionAt(range.end)];
  return {
    line: from.line,
    start: from.character,
    end: to.line === from.line ? to.character : -1,
    severity,
    rule,
    message,
  };
}

/** All that is told with a finding. Of a place in another file only the file is told. */
function inFull(
  { range, severity, message, subject, facts, related, fixes }: Finding,
  file: string,
  text: string,
): string {
  const place = (offset: number): string => {
    const { line, character } = lineIndexOf(text).positionAt(offset);
    return `${line + 1}:${character + 1}`;
  };
  return [
    `${place(range.start)} ${subject}, ${severity}: ${message}`,
    ...facts.map((fact) => `  ${fact.id}: ${isKnown(fact) ? showFact(fact) : fact.missing}`),
    ...related.map(
      (other) =>
        `  ${baseName(other.file) === file ? place(other.range.start) : baseName(other.file)} ${other.message}`,
    ),
    ...fixes.map((fix) => `  ${fix.kind}: ${fix.title}`),
  ].join('\n');
}

function placeOf({ line, start, rule }: Expected): string {
  return `${line}:${start}:${rule}`;
}

function byPlace(one: Expected, other: Expected): number {
  return one.line - other.line || one.start - other.start || one.rule.localeCompare(other.rule);
}
