/** What is built to break the program: each has a clear answer and a stated limit. */
import { mkdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fileUri } from '../../server/src/analysis/file-location.ts';
import { Workspace } from '../../server/src/analysis/workspace.ts';
import { hoverAt } from '../../server/src/features/reading/hover.ts';
import { accessOnDisk } from '../../server/src/lsp/disk-access.ts';
import { FILE_KINDS, SCHEMAS } from '../../server/src/model/schema.ts';
import { DIMENSIONS, type Dimension } from '../../server/src/quantity/dimension.ts';
import { readQuantity, readRange } from '../../server/src/quantity/read-quantity.ts';
import { LARGEST_FILE } from '../../server/src/syntax/parse-file.ts';
import { processorTime } from '../fuzz/probe.ts';
import { runIn, temporaryFolder } from '../samples/built-program.ts';

const SITE = 'file:///fennmoor/site.dewsite.yaml';
const KIT = 'file:///fennmoor/kits/models.dewkit.yaml';

function messagesOf(text: string, kit?: string): readonly string[] {
  const workspace = new Workspace();
  if (kit !== undefined) workspace.set(KIT, kit);
  workspace.set(SITE, text);
  return workspace.analysis(SITE)?.findings.map(({ message }) => message) ?? [];
}

/** In ms of the processor. */
function timed(run: () => void): number {
  const start = processorTime();
  run();
  return processorTime() - start;
}

describe('size', () => {
  it('a line of 100 MB: one finding that says the limit', () => {
    const [message, ...others] = messagesOf(`dewright: 1\nsite: {id: a, title: ${'x'.repeat(100e6)}}\n`);
    expect(message).toBe(`The file is longer than ${LARGEST_FILE / 1e6} million characters and is not checked.`);
    expect(others).toEqual([]);
  });

  it('a file of 100 MB: the program says the limit and ends with 1', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'large.dewsite.yaml'), `dewright: 1\nsite: {id: a, title: ${'x'.repeat(100e6)}}\n`);
    const { status, output, errors } = runIn(folder, 'check');
    expect({ status, errors }).toEqual({ status: 1, errors: '' });
    expect(output).toContain('is longer than 20 million characters');
  });

  it.each([
    ['[', 'brackets'],
    ['{a: ', 'braces'],
    ['- ', 'dashes'],
    ['? ', 'question marks'],
    ['&a ', 'anchors'],
  ])('100,000 %j: findings within five seconds', (piece) => {
    const text = `dewright: 1\nsite: ${piece.repeat(100_000)}\n`;
    let messages: readonly string[] = [];
    expect(timed(() => (messages = messagesOf(text)))).toBeLessThan(5000);
    expect(messages).not.toEqual([]);
  });

  it('an accuracy table of 1,000 rows: its uncertainty within two seconds', () => {
    const ends = Array.from({ length: 1000 }, (_, row) => [row / 10, (row + 1) / 10] as const);
    const rows = ends.map(
      ([low, high], row) => `{when: ${low} .. ${high} %RH, relative-humidity: ${1 + (row % 2)} %RH}`,
    );
    const kit = `dewright: 1
kit: {id: a, title: A}
humidity-probes: {fine: {title: A, accuracy: [${rows.join(', ')}], head-temperature: 0.1 K}}
`;
    const site = `dewright: 1
site: {id: a, kits: [kits/models.dewkit.yaml]}
spaces: {hall: {pressure: 90 .. 110 kPa, air: {temperature: 20 .. 60 degC, dew-point: 5 .. 20 degC}}}
points: {P-1: {space: hall, humidity-probe: {model: fine}, reports: {dew-point: {tolerance: 0.1 K}}}}
`;
    let messages: readonly string[] = [];
    expect(timed(() => (messages = messagesOf(site, kit)))).toBeLessThan(2000);
    expect(messages).toContainEqual(expect.stringContaining('The dew point is uncertain by'));
  });
});

describe('patterns under attack', () => {
  const ATTACKS = ['1', '-', 'a-', '1.', '1 ', ' .. ', '1 .. ', 'e1', '-a', ' ', '\t', '°', '%', '(g)', '0x', '_'].map(
    (piece) => piece.repeat(50_000),
  );
  const patterns = new Set(FILE_KINDS.flatMap((kind) => patternsIn(SCHEMAS[kind])));

  it.each([...patterns])('the schema pattern %s answers at once', (pattern) => {
    for (const attack of ATTACKS) {
      const spent = timed(() => new RegExp(pattern, 'u').test(`${attack}!`));
      expect(spent).toBeLessThan(200);
    }
  });

  it.each(Object.keys(DIMENSIONS) as Dimension[])('a long value of %s is refused at once', (dimension) => {
    for (const attack of ATTACKS) {
      const spent = timed(() => {
        expect(readQuantity(`${attack}!`, dimension).ok).toBe(false);
        expect(readRange(`1 .. ${attack} K`, dimension).ok).toBe(false);
      });
      expect(spent).toBeLessThan(200);
    }
  });
});

describe('words that would be something else where they are shown', () => {
  it('links, pictures and markup of a kit stand in a hover as they were typed', () => {
    const title = '[open](command:workbench.action.quit) <img src=x> `a` ![](http://nowhere.invalid)';
    const text =
      'dewright: 1\nsite: {id: a, kits: [kits/models.dewkit.yaml]}\npoints:\n  A-1: {humidity-probe: {model: hp}}\n';
    const workspace = new Workspace();
    workspace.set(KIT, `dewright: 1\nkit: {id: k}\nhumidity-probes:\n  hp: {title: ${JSON.stringify(title)}}\n`);
    workspace.set(SITE, text);
    const analysis = workspace.analysis(SITE);
    const markdown = analysis === undefined ? '' : (hoverAt(analysis, text.indexOf('hp}'))?.markdown ?? '');
    const unescaped = markdown.replace(/\\[^\w\s]/g, '');
    expect(markdown).toContain('open');
    expect(unescaped).not.toMatch(/\]\(|<img|!\[|`a`/);
  });
});

describe('paths', () => {
  const KIT_TEXT = 'dewright: 1\nkit: {id: k}\n';

  it('the language server reads nothing outside of the workspace: not above it, not through a link', async () => {
    const outside = temporaryFolder();
    const folder = join(outside, 'workspace');
    mkdirSync(join(folder, 'kits'), { recursive: true });
    writeFileSync(join(outside, 'secret.dewkit.yaml'), KIT_TEXT);
    writeFileSync(join(folder, 'kits', 'own.dewkit.yaml'), KIT_TEXT);
    symlinkSync(join(outside, 'secret.dewkit.yaml'), join(folder, 'kits', 'linked.dewkit.yaml'));
    symlinkSync(outside, join(folder, 'up'));
    const { readFile } = accessOnDisk([folder]);
    expect(await readFile(fileUri(join(folder, 'kits', 'own.dewkit.yaml')))).toBe(KIT_TEXT);
    for (const path of [
      '../secret.dewkit.yaml',
      'kits/linked.dewkit.yaml',
      'up/secret.dewkit.yaml',
      'kits/../../secret.dewkit.yaml',
    ]) {
      expect(await readFile(`${fileUri(folder)}/${path}`)).toBeUndefined();
    }
  });

  it('folders that link to each other in a loop are searched once', () => {
    const folder = temporaryFolder();
    mkdirSync(join(folder, 'a'));
    mkdirSync(join(folder, 'b'));
    symlinkSync(join(folder, 'b'), join(folder, 'a', 'to-b'));
    symlinkSync(join(folder, 'a'), join(folder, 'b', 'to-a'));
    writeFileSync(join(folder, 'a', 'kit.dewkit.yaml'), KIT_TEXT);
    const { status, output } = runIn(folder, 'check', '--format', 'json');
    expect(status).toBe(0);
    expect(JSON.parse(output).summary.files).toBe(1);
  });

  it.each(['a\u0007\u001b[31mb', '**bold** [x](y)', 'a\nb', '%41', '#', '?x=1', 'ä ö', "it's", '-rf'])(
    'a file named %j is checked, and its finding is at its place',
    (name) => {
      const folder = temporaryFolder();
      writeFileSync(join(folder, `${name}.dewsite.yaml`), 'dewright: 1\nsite: {id: a, nonsense: 1}\n');
      const { status, output, errors } = runIn(folder, 'check', '--format', 'json', '.');
      expect({ status, errors }).toEqual({ status: 1, errors: '' });
      expect(JSON.parse(output).files[0]).toMatchObject({
        path: `${name}.dewsite.yaml`,
        findings: [{ rule: 'schema' }],
      });
    },
  );

  it('a link to nowhere is left out', () => {
    const folder = temporaryFolder();
    symlinkSync(join(folder, 'gone'), join(folder, 'x.dewsite.yaml'));
    expect(JSON.parse(runIn(folder, 'check', '--format', 'json').output).summary.files).toBe(0);
    rmSync(join(folder, 'x.dewsite.yaml'));
  });
});

function patternsIn(schema: object): readonly string[] {
  return Object.entries(schema).flatMap(([key, value]) => {
    if (key === 'pattern' && typeof value === 'string') return [value];
    return typeof value === 'object' && value !== null ? patternsIn(value) : [];
  });
}
