import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { expect, it } from 'vitest';
import { filesBelow, findFiles } from '../../server/src/cli/find-files.ts';
import { temporaryFolder } from '../samples/built-program.ts';

function folderWith(...paths: readonly string[]): string {
  const folder = temporaryFolder();
  for (const path of paths) {
    mkdirSync(join(folder, path, '..'), { recursive: true });
    writeFileSync(join(folder, path), '');
  }
  return folder;
}

it('what git ignores is left out, by the rules of every folder up to the top of the repository', () => {
  const folder = folderWith('a/kept.dewsite.yaml', 'a/old.dewsite.yaml', 'a/b/draft.dewkit.yaml', '.git/HEAD');
  writeFileSync(join(folder, '.gitignore'), 'old.*\n');
  writeFileSync(join(folder, 'a', '.gitignore'), 'b/\n');
  const { files, whole } = findFiles([join(folder, 'a')]);
  expect(files.map((file) => relative(folder, file))).toEqual([join('a', 'kept.dewsite.yaml')]);
  expect(whole).toBe(true);
});

it('a link to itself, and one to nowhere, are left out', () => {
  const folder = folderWith('site.dewsite.yaml');
  symlinkSync('round.dewsite.yaml', join(folder, 'round.dewsite.yaml'));
  symlinkSync('nowhere.dewsite.yaml', join(folder, 'lost.dewsite.yaml'));
  expect(findFiles([folder]).files).toEqual([join(folder, 'site.dewsite.yaml')]);
});

it('a folder that cannot be read is told of, and a call that asks for it says which', () => {
  const missing = join(temporaryFolder(), 'gone');
  expect(filesBelow(missing)).toEqual({ files: [], unread: [missing] });
  expect(() => findFiles([missing])).toThrow(`${missing}: there is no such file or folder`);
});
