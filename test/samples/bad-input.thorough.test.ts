import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/src/analysis/analysis.ts';
import { hoverAt } from '../../server/src/features/reading/hover.ts';
import { copyOfSamples, runIn, temporaryFolder } from './built-program.ts';
import { analysisOf, readSample, SAMPLE_NAMES, sampleUri, sampleWorkspace } from './sample-files.ts';

const SITE = 'timber-kilns.dewsite.yaml';

/** Every finding is a sentence without leftovers of the program, at a place inside the text. */
function expectSensible(analysis: Analysis, text: string): void {
  for (const { message, range } of analysis.findings) {
    expect(message).toMatch(/^\S.*[.]$/s);
    expect(message).not.toMatch(/undefined|NaN|Infinity|\[object/);
    expect(range.start).toBeLessThanOrEqual(range.end);
    expect(range.end).toBeLessThanOrEqual(text.length);
  }
}

function* cutsOf(text: string, step: number): Generator<string> {
  for (let end = 0; end < text.length; end += step) yield text.slice(0, end);
}

/** Names of ten levels, each nine times the one before: 3 billion values in 600 characters. */
function aliasBomb(): string {
  const levels = Array.from({ length: 10 }, (_, level) =>
    level === 0
      ? '  a0: &a0 [steam]'
      : `  a${level}: &a${level} [${Array(9)
          .fill(`*a${level - 1}`)
          .join(', ')}]`,
  );
  return `dewright: 1\nsite: {id: bomb}\nspaces:\n${levels.join('\n')}\n`;
}

const JUNK = Buffer.from(Array.from({ length: 4096 }, (_, index) => (index * 167 + (index >> 3)) % 256));

const TEXTS: readonly (readonly [string, string])[] = [
  ['an empty file', ''],
  ['blank lines', '\n\n \n'],
  ['a comment alone', '# nothing yet'],
  ['a byte order mark alone', '\uFEFF'],
  ['binary junk', JUNK.toString('utf8')],
  ['a list', '- dewright: 1\n- site\n'],
  ['a number', '42\n'],
  ['two documents', 'dewright: 1\nsite: {id: a}\n---\ndewright: 1\nsite: {id: b}\n'],
  ['an alias bomb', aliasBomb()],
  ['an alias to itself', 'dewright: 1\nsite: &s {id: a, defaults: *s}\n'],
  ['an alias without its anchor', 'dewright: 1\nsite: *nowhere\n'],
  ['brackets to a depth of 5000', `dewright: 1\nsite: ${'['.repeat(5000)}`],
  ['tabs for indentation', 'dewright: 1\nsite:\n\tid: a\n'],
  ['keys of the language itself', 'dewright: 1\nsite: {id: a, __proto__: {b: 1}, constructor: c, toString: d}\n'],
];

describe('a text that is no site', () => {
  it.each(TEXTS)('%s: errors that read as sentences, and no throw', (_, text) => {
    const workspace = sampleWorkspace();
    workspace.set(sampleUri(SITE), text);
    const analysis = analysisOf(workspace, SITE);
    expect(analysis.findings.some(({ severity }) => severity === 'error')).toBe(true);
    expectSensible(analysis, text);
    expect(() => hoverAt(analysis, Math.floor(text.length / 2))).not.toThrow();
  });

  it.each(TEXTS)('%s: the program ends with 1 and says nothing on standard error', (_, text) => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, SITE), text);
    const { status, errors } = runIn(folder, 'check', SITE);
    expect({ status, errors }).toEqual({ status: 1, errors: '' });
  });

  it('bytes that are no text: the program ends with 1 and says nothing on standard error', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, SITE), JUNK);
    const { status, errors } = runIn(folder, 'check', SITE);
    expect({ status, errors }).toEqual({ status: 1, errors: '' });
  });

  it('a title of a million characters is read as any other', () => {
    const workspace = sampleWorkspace();
    workspace.set(sampleUri(SITE), `dewright: 1\nsite: {id: a, title: ${'x'.repeat(1e6)}}\n`);
    expect(analysisOf(workspace, SITE).findings).toEqual([]);
  });
});

describe('a sample without its kit', () => {
  it.each([
    ['is not there', (kit: string) => rmSync(kit)],
    [
      'is a folder',
      (kit: string) => {
        rmSync(kit);
        mkdirSync(kit);
      },
    ],
    ['is empty', (kit: string) => writeFileSync(kit, '')],
  ])('a kit that %s is told as an error, and nothing on standard error', (_, spoil) => {
    const folder = copyOfSamples();
    spoil(join(folder, 'kits/test-stand.dewkit.yaml'));
    const { status, output, errors } = runIn(folder, 'check', '--format', 'json');
    expect({ status, errors }).toEqual({ status: 1, errors: '' });
    expect(output).toMatch(/"rule":"(reference-unknown|schema)"/);
  });
});

describe('a sample that is cut off', () => {
  it.each(SAMPLE_NAMES)('%s, after every 37th character, is analysed without a throw', (name) => {
    const workspace = sampleWorkspace();
    for (const text of cutsOf(readSample(name), 37)) {
      workspace.set(sampleUri(name), text);
      const analysis = analysisOf(workspace, name);
      expectSensible(analysis, text);
      expect(() => hoverAt(analysis, text.length)).not.toThrow();
    }
  });

  it('the program ends with 0 or 1 wherever it is cut, and says nothing on standard error', () => {
    const folder = copyOfSamples();
    for (const text of cutsOf(readSample(SITE), 997)) {
      writeFileSync(join(folder, SITE), text);
      const { status, errors } = runIn(folder, 'check', SITE);
      expect(errors).toBe('');
      expect([0, 1]).toContain(status);
    }
  });
});
