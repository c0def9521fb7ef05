import { appendFileSync, cpSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { loadDuckDB } from '../../server/src/recording/source/duckdb.ts';
import { readMarks } from '../rules/fixture.ts';
import { type EditorOfTest, itInEditor } from './page-of-test.ts';
import { PROJECT_ROOT } from './paths.ts';
import { describeInEditor } from './running-editor.ts';
import { hoverAt, openWorkbench, placeIn, problems } from './workbench-page.ts';

const FIXTURE = join(PROJECT_ROOT, 'test/rules/log-outside-envelope');
const VISIT = readMarks(readFileSync(join(FIXTURE, 'faulty.dewvisit.yaml'), 'utf8')).text;
const VISIT_FILE = 'dryer.dewvisit.yaml';
const LOG = placeIn(VISIT, 'wet.csv');
const HAS_DUCKDB = loadDuckDB([PROJECT_ROOT]).ok;

const it = itInEditor();
const itRestricted = itInEditor({ restricted: true });

describeInEditor('the recording of an open visit', () => {
  it.beforeEach(({ editor }) => layOut(editor.folder));

  it.skipIf(!HAS_DUCKDB)(
    'is read with the DuckDB of the workspace, and again when it is written to',
    async ({ page, editor }) => {
      bringDuckDB(editor.folder);
      await openVisit(page, editor);
      await expect.poll(() => rulesIn(page)).toContain('log-outside-envelope');
      await hoverAt(page, LOG, { hasText: 'Outside the envelope for 20 min, 2 % of the time.' });
      cpSync(join(FIXTURE, 'dry.csv'), join(editor.folder, 'wet.csv'));
      await expect.poll(() => rulesIn(page)).not.toContain('log-outside-envelope');
    },
  );

  it('is not read without DuckDB, and its hover says what to install and where', async ({ page, editor }) => {
    const unheard = `2026-09-10T00:00:00Z,60,50,${Date.now()}\n`; // what was read of a log before needs no DuckDB
    appendFileSync(join(editor.folder, 'wet.csv'), unheard);
    await openVisit(page, editor);
    await hoverAt(page, LOG, { hasText: `run “npm install @duckdb/node-api” in ${editor.folder}` });
  });
});

describeInEditor('in a folder that the user does not trust the recording of an open visit', () => {
  itRestricted.beforeEach(({ editor }) => layOut(editor.folder));

  itRestricted('is not read', async ({ page, editor }) => {
    bringDuckDB(editor.folder);
    await openVisit(page, editor);
    const words = 'native code, which is not started in a workspace that is not trusted';
    await hoverAt(page, LOG, { hasText: words });
  });
});

function openVisit(page: Page, { server, folder }: EditorOfTest): Promise<void> {
  return openWorkbench(page, server, folder, VISIT_FILE);
}

function bringDuckDB(folder: string): void {
  symlinkSync(join(PROJECT_ROOT, 'node_modules'), join(folder, 'node_modules'));
}

/** The site of the fixture, its kit, a visit and its log, alone. */
function layOut(folder: string): void {
  for (const name of readdirSync(folder)) rmSync(join(folder, name), { recursive: true });
  const site = readFileSync(join(FIXTURE, 'dryer.dewsite.yaml'), 'utf8');
  writeFileSync(join(folder, 'dryer.dewsite.yaml'), site.replace('../kits/', ''));
  cpSync(join(FIXTURE, '../kits/models.dewkit.yaml'), join(folder, 'models.dewkit.yaml'));
  cpSync(join(FIXTURE, 'wet.csv'), join(folder, 'wet.csv'));
  writeFileSync(join(folder, VISIT_FILE), VISIT);
}

async function rulesIn(page: Page): Promise<readonly string[]> {
  return (await problems(page)).map(({ code }) => code);
}
