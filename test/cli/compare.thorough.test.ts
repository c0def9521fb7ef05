import { execFileSync } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { copyOfSamples, runIn, temporaryFolder } from '../samples/built-program.ts';

const SITE = 'timber-kilns.dewsite.yaml';
const KIT = 'kits/fennmoor.dewkit.yaml';

function git(folder: string, ...words: readonly string[]): void {
  const who = { GIT_AUTHOR_NAME: 'x', GIT_AUTHOR_EMAIL: 'x', GIT_COMMITTER_NAME: 'x', GIT_COMMITTER_EMAIL: 'x' };
  execFileSync('git', words, { cwd: folder, stdio: 'ignore', env: { ...process.env, ...who } });
}

/** The samples, committed. */
function repository(): string {
  const folder = copyOfSamples();
  git(folder, 'init', '--quiet');
  git(folder, 'add', '.');
  git(folder, 'commit', '--quiet', '--message', 'samples');
  return folder;
}

function edit(folder: string, file: string, from: string, to: string): void {
  const path = join(folder, file);
  const text = readFileSync(path, 'utf8');
  expect(text).toContain(from);
  writeFileSync(path, text.replace(from, to));
}

describe('dewright compare', () => {
  it('tells nothing of a file and itself', () => {
    const { status, output } = runIn(copyOfSamples(), 'compare', SITE, SITE);
    expect({ status, output }).toEqual({ status: 0, output: 'Nothing has changed in meaning.\n' });
  });

  it('lays a file against its last revision, with the kits of that revision', () => {
    const folder = repository();
    edit(folder, KIT, 'head-temperature: 0.1 K #', 'head-temperature: 0.4 K #');
    edit(folder, SITE, 'spacing: 60 mm, position: above', 'spacing: 60 mm, position: below');
    const { status, output } = runIn(folder, 'compare', '--format', 'json', `HEAD:${SITE}`, SITE);
    expect(status).toBe(0);
    const { values, facts, findings } = JSON.parse(output);
    expect(values.map(({ path }: { path: string }) => path)).toEqual([
      'points.K3-MT-101.air-temperature-probe.mounting.position',
      'humidity-probes.hp-heated.head-temperature',
    ]);
    expect(facts).toContainEqual(
      expect.objectContaining({
        subject: 'K1-MT-101',
        id: 'dew-point/expanded-uncertainty',
        because: ['hp-heated head-temperature: 0.1 K → 0.4 K'],
      }),
    );
    expect(findings).toContainEqual(expect.objectContaining({ kind: 'went', rule: 'air-probe-above' }));
  });

  it('takes a path from the top of the repository, and from here where it starts with ./', () => {
    const folder = repository();
    const kits = join(folder, 'kits');
    writeFileSync(join(kits, 'here.dewsite.yaml'), readFileSync(join(folder, SITE)));
    git(folder, 'add', '.');
    git(folder, 'commit', '--quiet', '--message', 'one more');
    expect(runIn(kits, 'compare', `HEAD:${SITE}`, `../${SITE}`).status).toBe(0);
    expect(runIn(kits, 'compare', 'HEAD:./here.dewsite.yaml', 'here.dewsite.yaml').output).toContain('Nothing');
    expect(runIn(kits, 'compare', `HEAD:../${SITE}`, `../${SITE}`).output).toContain('Nothing');
  });

  it('fails on an error that came, and not where that is allowed', () => {
    const folder = repository();
    edit(folder, SITE, 'rise: 6 K, set-at: factory', 'rise: 1 K, set-at: factory');
    expect(runIn(folder, 'compare', `HEAD:${SITE}`, SITE).status).toBe(1);
    expect(runIn(folder, 'compare', '--fail-on', 'never', `HEAD:${SITE}`, SITE).status).toBe(0);
    expect(runIn(folder, 'compare', SITE, `HEAD:${SITE}`).status).toBe(0);
  });

  it.each([
    ['one version', [SITE], 'compare takes an old and a new version of a site'],
    ['a kit', [KIT, KIT], 'not a file that is named *.dewsite.yaml'],
    ['a file that is not there', ['none.dewsite.yaml', SITE], 'none.dewsite.yaml: there is no such file'],
    ['a revision that is not there', [`none:${SITE}`, SITE], 'none: git knows no such revision here'],
    ['a revision that looks like an option', [`--all:${SITE}`, SITE], ''],
    [
      'a revision that would be an option of git',
      ['--', `--all:${SITE}`, SITE],
      '--all: git knows no such revision here',
    ],
    [
      'a path that the revision has not',
      ['HEAD:none.dewsite.yaml', SITE],
      'none.dewsite.yaml: not in the repository at HEAD',
    ],
    ['a path out of the repository', [`HEAD:../../${SITE}`, SITE], 'not in the repository at HEAD'],
  ])('ends with status 2 and a sentence for %s', (_, words, sentence) => {
    const { status, output, errors } = runIn(repository(), 'compare', ...words);
    expect({ status, output }).toEqual({ status: 2, output: '' });
    expect(errors).toMatch(/^dewright: .+\n$/);
    expect(errors).toContain(sentence);
  });

  it('says so where there is no repository', () => {
    const folder = copyOfSamples();
    const { status, errors } = runIn(folder, 'compare', `HEAD:${SITE}`, SITE);
    expect({ status, errors }).toEqual({
      status: 2,
      errors: `dewright: HEAD:${SITE}: this folder is in no git repository\n`,
    });
  });

  it('refuses a text that does not parse, since its entries would seem to be gone', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'a.dewsite.yaml'), 'dewright: 1\nsite: {id: a\npoints: {}\n');
    const { status, errors } = runIn(folder, 'compare', 'a.dewsite.yaml', 'a.dewsite.yaml');
    expect(status).toBe(2);
    expect(errors).toMatch(/^dewright: a\.dewsite\.yaml: line \d+ does not parse, so that it cannot be compared\n$/);
    rmSync(join(folder, 'a.dewsite.yaml'));
  });
});
