import { describe, expect, it } from 'vitest';
import { baseName, fileUri } from '../../server/src/analysis/file-location.ts';
import type { Finding } from '../../server/src/analysis/finding.ts';
import { lineIndexOf } from '../../server/src/base/line-index.ts';
import { applyEdits } from '../../server/src/base/text-range.ts';
import { RULES } from '../../server/src/rules/registry.generated.ts';
import { type Expected, findingsOf, fixtureFolders, fixtureOf, readMarks } from './fixture.ts';

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

function placeOf({ line, start, rule }: Expected): string {
  return `${line}:${start}:${rule}`;
}

function byPlace(one: Expected, other: Expected): number {
  return one.line - other.line || one.start - other.start || one.rule.localeCompare(other.rule);
}
