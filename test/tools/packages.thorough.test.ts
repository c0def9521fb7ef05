import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { publint } from 'publint';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../samples/built-program.ts';

describe('the packed extension', () => {
  it('has the same bytes in two packs, and packing warns of nothing', { timeout: 300_000 }, () => {
    const folder = temporaryFolder();
    const [first, second] = ['first.vsix', 'second.vsix'].map((name) => {
      const words = ['server/tools/package.mjs', '--out', join(folder, name)];
      const { status, stderr } = spawnSync(process.execPath, words, { encoding: 'utf8' });
      expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
      return readFileSync(join(folder, name));
    });
    expect(second?.equals(first ?? Buffer.of())).toBe(true);
  });
});

describe('the npm package', () => {
  it('holds the programs of the command line, what they read, and nothing else', () => {
    const [{ files }] = JSON.parse(run('npm', 'pack', '--dry-run', '--json', '--ignore-scripts'));
    expect(files.map(({ path }: { path: string }) => path).toSorted()).toEqual([
      'CHANGELOG.md',
      'LICENSE',
      'README.md',
      'client/dist/sbom.cdx.json',
      'client/dist/third-party-licences.txt',
      'package.json',
      'schemas/dewkit.schema.json',
      'schemas/dewsite.schema.json',
      'schemas/dewvisit.schema.json',
      'server/dist/cli.js',
      'server/dist/recording.js',
      'server/dist/server.js',
    ]);
  });

  it('runs where it is unpacked, with no library beside it', () => {
    const folder = temporaryFolder();
    const [{ filename }] = JSON.parse(run('npm', 'pack', '--json', '--ignore-scripts', '--pack-destination', folder));
    run('tar', '-xzf', join(folder, filename), '-C', folder);
    cpSync('samples', join(folder, 'samples'), { recursive: true });
    const words = ['check', join(folder, 'samples/bakery-prover.dewsite.yaml')];
    expect(run(process.execPath, join(folder, 'package/server/dist/cli.js'), ...words)).toContain('nothing to report');
  });

  it('publint has nothing against it but that the entries for VS Code are not in it: they come as a .vsix', async () => {
    const { messages } = await publint({ pkgDir: '.', level: 'warning', pack: 'npm' });
    const said = messages.map(({ code, path }) => `${code} ${path.join('.')}`);
    expect(said.toSorted()).toEqual(['FILE_NOT_PUBLISHED browser', 'FILE_NOT_PUBLISHED main']);
  });
});

describe('the bundled programs', () => {
  it.each([
    'client/dist/extension.js',
    'client/dist/view.js',
    'server/dist/cli.js',
    'server/dist/hosted.js',
    'server/dist/recording.js',
    'server/dist/server.js',
  ])('%s is Latin-1 alone: for any other character the engine keeps two bytes for each of all', (program) => {
    expect(readFileSync(program, 'utf8')).not.toMatch(/[^\0-\xff]/);
  });
});

function run(program: string, ...words: readonly string[]): string {
  return execFileSync(program, words, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
}
