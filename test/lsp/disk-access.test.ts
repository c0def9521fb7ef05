import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { fileUri } from '../../server/src/analysis/file-location.ts';
import { accessOnDisk, isInside } from '../../server/src/lsp/disk-access.ts';
import { temporaryFolder } from '../samples/built-program.ts';

it('a workspace folder that is not there has no files, and hides none of the others', async () => {
  const folder = temporaryFolder();
  const site = join(folder, 'site.dewsite.yaml');
  writeFileSync(site, 'dewright: 1\n');
  const { findFiles, readFile } = accessOnDisk([join(folder, 'gone'), folder]);
  expect(await findFiles()).toEqual([fileUri(site)]);
  expect(await readFile(fileUri(site))).toBe('dewright: 1\n');
});

it('and lets nothing be read that lies outside of all of them', async () => {
  const [outside, folder] = [temporaryFolder(), temporaryFolder()];
  const log = join(outside, 'kiln.csv');
  writeFileSync(log, '');
  expect(await isInside([join(folder, 'gone'), folder], log)).toBe(false);
});
