import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { findChromium } from '../../server/src/cli/print-pdf.ts';
import { copyOfSamples, runIn } from '../samples/built-program.ts';

const SITE = 'timber-kilns.dewsite.yaml';

afterEach(() => vi.unstubAllEnvs());

/** The files of the folder itself, hidden ones too. */
function namesIn(folder: string): readonly string[] {
  return readdirSync(folder).toSorted();
}

describe('dewright report', () => {
  it('writes HTML and Markdown with the contents that they were made from, the same in every run', () => {
    const folder = copyOfSamples();
    for (const name of ['a.html', 'b.html', 'a.md', 'b.md']) {
      expect(runIn(folder, 'report', SITE, '--out', name)).toEqual({ status: 0, output: '', errors: '' });
    }
    const read = (name: string): string => readFileSync(join(folder, name), 'utf8');
    expect(read('a.html')).toBe(read('b.html'));
    expect(read('a.md')).toBe(read('b.md'));
    expect(read('a.html')).toMatch(/^<!doctype html>/);
    expect(read('a.md')).toMatch(
      /^# Fennmoor Timber, drying hall: handover pack\n\nMade on \d{4}-\d\d-\d\d from contents [0-9a-f]{12}\.\n/,
    );
  });

  it('names other contents where the site or a kit of it changes', () => {
    const folder = copyOfSamples();
    const revision = (): string | undefined => {
      runIn(folder, 'report', SITE, '--out', 'a.md');
      return /contents ([0-9a-f]+)/.exec(readFileSync(join(folder, 'a.md'), 'utf8'))?.[1];
    };
    const before = revision();
    const kit = join(folder, 'kits/fennmoor.dewkit.yaml');
    writeFileSync(kit, `${readFileSync(kit, 'utf8')}\n`);
    expect(revision()).not.toBe(before);
  });

  it.skipIf(findChromium() === undefined)('prints a tagged PDF of many pages', () => {
    const folder = copyOfSamples();
    const before = namesIn(folder);
    expect(runIn(folder, 'report', SITE, '--out', 'pack.pdf')).toEqual({ status: 0, output: '', errors: '' });
    const pdf = readFileSync(join(folder, 'pack.pdf'), 'latin1');
    expect(pdf.slice(0, 5)).toBe('%PDF-');
    expect(/\/Marked true/.test(pdf)).toBe(true);
    expect((pdf.match(/\/Type\s*\/Page\b(?!s)/g) ?? []).length).toBeGreaterThan(5);
    expect(namesIn(folder)).toEqual([...before, 'pack.pdf'].toSorted());
  });

  it('writes HTML where there is no Chromium, and says so', () => {
    const folder = copyOfSamples();
    vi.stubEnv('PATH', '');
    vi.stubEnv('CHROMIUM', '');
    const { status, errors } = runIn(folder, 'report', SITE, '--out', 'pack.pdf');
    expect(status).toBe(0);
    expect(errors).toMatch(/^no Chromium was found to print the PDF, so pack\.html was written instead: .+\n$/);
    expect(readFileSync(join(folder, 'pack.html'), 'utf8')).toMatch(/^<!doctype html>/);
    expect(existsSync(join(folder, 'pack.pdf'))).toBe(false);
  });

  it('says so where the Chromium that is named cannot print', () => {
    const folder = copyOfSamples();
    const before = namesIn(folder);
    vi.stubEnv('CHROMIUM', join(folder, 'nothing'));
    const { status, errors } = runIn(folder, 'report', SITE, '--out', 'pack.pdf');
    expect({ status, lines: errors.trimEnd().split('\n').length }).toEqual({ status: 2, lines: 1 });
    expect(errors).toContain('it could not print the pack');
    expect(namesIn(folder)).toEqual(before);
  });

  it('keeps the old file where the new one cannot be written whole', () => {
    const folder = copyOfSamples();
    // What is written beside it would have a name longer than file systems take.
    const out = `${'x'.repeat(246)}.html`;
    writeFileSync(join(folder, out), 'old');
    const before = namesIn(folder);
    const { status, errors } = runIn(folder, 'report', SITE, '--out', out);
    expect(status).toBe(2);
    expect(errors).toContain('the file stands as it was');
    expect(readFileSync(join(folder, out), 'utf8')).toBe('old');
    expect(namesIn(folder)).toEqual(before);
  });

  it.each([
    ['no site', ['--out', 'a.html'], 'report takes one site'],
    ['no place', [SITE], 'say --out FILE.html, FILE.pdf or FILE.md'],
    ['a kit', ['kits/fennmoor.dewkit.yaml', '--out', 'a.html'], 'not a file that is named *.dewsite.yaml'],
    ['another ending', [SITE, '--out', 'a.docx'], 'the name ends with .html, .pdf or .md'],
    ['a site that is not there', ['none.dewsite.yaml', '--out', 'a.html'], 'none.dewsite.yaml: there is no such file'],
    ['a folder that is not there', [SITE, '--out', 'none/a.html'], 'none/a.html: there is no such folder'],
  ])('ends with status 2 and a sentence for %s', (_, words, sentence) => {
    const folder = copyOfSamples();
    const { status, output, errors } = runIn(folder, 'report', ...words);
    expect({ status, output }).toEqual({ status: 2, output: '' });
    expect(errors).toMatch(/^dewright: .+\n$/);
    expect(errors).toContain(sentence);
  });
});
