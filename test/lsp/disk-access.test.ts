import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { fileUri } from '../../server/src/analysis/file-location.ts';
import { accessOnDisk } from '../../server/src/lsp/disk-access.ts';
import { temporaryFolder } from '../samples/built-program.ts';

it('a workspace folder that is not there has no files, and hides none of the others', async () => {
  const folder = temporaryFolder();
  const site = join(folder, 'site.dewsite.yaml');
  writeFileSync(site, '');
  const { findFiles } = accessOnDisk([join(folder, 'gone'), folder]);
  expect(await findFiles()).toEqual([fileUri(site)]);
});
