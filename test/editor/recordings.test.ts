import { appendFileSync, cpSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, expect, it } from 'vitest';
import { loadDuckDB } from '../../server/src/recording/duckdb.ts';
import { readMarks } from '../rules/fixture.ts';
import { PROJECT_ROOT } from './paths.ts';
import { describeInEditor, type RunningEditor, startEditor } from './running-editor.ts';
import { hoverAt, openWorkbench, placeIn, problems } from './workbench-page.ts';

const FIXTURE = join(PROJECT_ROOT, 'test/rules/log-outside-envelope');
const VISIT = readMarks(readFileSync(join(FIXTURE, 'faulty.dewvisit.yaml'), 'utf8')).text;
const VISIT_FILE = 'dryer.dewvisit.yaml';
const PATIENCE = { timeout: 40_000 };
const HAS_DUCKDB = loadDuckDB([PROJECT_ROOT]).ok;

describeInEditor('the recording of an open visit', () => {
  let editor: RunningEditor;

  afterEach(() => editor?.end());

  it.skipIf(!HAS_DUCKDB)('is read with the DuckDB of the workspace, and again when it is written to', async () => {
    editor = await startEditor();
    layOut(editor.folder);
    symlinkSync(join(PROJECT_ROOT, 'node_modules'), join(editor.folder, 'node_modules'));
    const page = await open();
    await expect.poll(() => rulesIn(page), PATIENCE).toContain('log-outside-envelope');
    await expectHover(page, 'Outside the envelope for 20 min, 2 % of the time.');
    cpSync(join(FIXTURE, 'dry.csv'), join(editor.folder, 'wet.csv'));
    await expect.poll(() => rulesIn(page), PATIENCE).not.toContain('log-outside-envelope');
  });

  it('is not read without DuckDB, and its hover says what to install and where', async () => {
    editor = await startEditor();
    layOut(editor.folder);
    const unheard = `2026-09-10T00:00:00Z,60,50,${Date.now()}\n`; // what was read of a log before needs no DuckDB
    appendFileSync(join(editor.folder, 'wet.csv'), unheard);
    const page = await open();
    await expectHover(page, `run “npm install @duckdb/node-api” in ${editor.folder}`);
  });

  it('is not read in a folder that the user does not trust', async () => {
    editor = await startEditor({ restricted: true });
    layOut(editor.folder);
    symlinkSync(join(PROJECT_ROOT, 'node_modules'), join(editor.folder, 'node_modules'));
    const page = await open();
    await expectHover(page, 'native code, which is not started in a workspace that is not trusted');
  });

  async function open(): Promise<Page> {
    const page = await editor.browser.newPage();
    await openWorkbench(page, editor.server, editor.folder, VISIT_FILE);
    return page;
  }
});

/** The site of the fixture, its kit, a visit and its log, alone: the Problems panel draws no more rows than fit. */
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

async function expectHover(page: Page, words: string): Promise<void> {
  await expect
    .poll(async () => {
      const text = await (await hoverAt(page, placeIn(VISIT, 'wet.csv'))).textContent();
      await page.keyboard.press('Escape');
      return text;
    }, PATIENCE)
    .toContain(words);
}
