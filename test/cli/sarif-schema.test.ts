import { cpSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { runIn, temporaryFolder } from '../samples/built-program.ts';
import { SAMPLES_FOLDER } from '../samples/sample-files.ts';

const CORPUS_FOLDER = fileURLToPath(new URL('../corpus/', import.meta.url));

/** RFC 3986: reserved and unreserved characters, and percent signs that begin an escape. */
const URI_REFERENCE = /^(?:[\w\-.~:/?#[\]@!$&'()*+,;=]|%[\da-f]{2})*$/i;

/** OASIS, SARIF 2.1.0 errata 01, sarif-schema-2.1.0.json: its constraints. */
const isSarif = new Ajv({
  allErrors: true,
  strictTypes: false, // the schema names some types only where it refers to them
  formats: {
    'date-time': (text) => !Number.isNaN(Date.parse(text)),
    uri: (text) => URL.canParse(text) && URI_REFERENCE.test(text),
    'uri-reference': URI_REFERENCE,
  },
}).compile(JSON.parse(readFileSync(new URL('schemas/sarif-2.1.0.json', import.meta.url), 'utf8')));

function problemsOf(log: unknown): unknown {
  return isSarif(log) ? [] : isSarif.errors;
}

function sarifOf(folder: string) {
  return JSON.parse(runIn(folder, 'check', '--format', 'sarif', '--fail-on', 'never').output);
}

describe('the schema of SARIF 2.1.0 (OASIS, errata 01)', () => {
  it.each([
    ['the samples', SAMPLES_FOLDER],
    ['the corpus', CORPUS_FOLDER],
  ])('holds for %s', (_name, folder) => {
    const log = sarifOf(folder);
    expect(problemsOf(log)).toEqual([]);
    expect(log.runs[0].results.length).toBeGreaterThan(10);
  });

  it('holds for a folder without files', () => {
    expect(problemsOf(sarifOf(temporaryFolder()))).toEqual([]);
  });

  it('holds for a path with characters that mean something in a URI, and the URI still names the file', () => {
    const folder = temporaryFolder();
    const name = 'hall #2, 50 % ü?.dewsite.yaml';
    cpSync(join(SAMPLES_FOLDER, 'timber-kilns.dewsite.yaml'), join(folder, name));
    const log = sarifOf(folder);
    expect(problemsOf(log)).toEqual([]);
    const { uri } = log.runs[0].results[0].locations[0].physicalLocation.artifactLocation;
    expect(decodeURIComponent(new URL(uri, 'file:///').pathname)).toBe(`/${name}`);
  });

  it('does not hold where a column counts from zero, or a result has no message', () => {
    const log = sarifOf(SAMPLES_FOLDER);
    log.runs[0].results[0].locations[0].physicalLocation.region.startColumn = 0;
    delete log.runs[0].results[1].message;
    expect(problemsOf(log)).toMatchObject([
      { instancePath: '/runs/0/results/0/locations/0/physicalLocation/region/startColumn', keyword: 'minimum' },
      { instancePath: '/runs/0/results/1', keyword: 'required' },
    ]);
  });
});
