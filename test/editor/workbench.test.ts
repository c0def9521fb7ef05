import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import { watchConsoleErrors } from './console-errors.ts';
import { describeInEditor, type EditorSession, startEditorSession } from './editor-session.ts';
import { cacheFolder } from './paths.ts';
import { goTo, hoverAt, openWorkbench, type Place, problems, quickFixes, runCommand, save } from './workbench-page.ts';

/** What the page showed when a test failed. */
const failureFolder = join(cacheFolder, 'failed');
const siteFile = 'fennmoor.dewsite.yaml';

describeInEditor('in the workbench', () => {
  let session: EditorSession;
  let page: Page;
  let errors: readonly string[];

  beforeAll(async () => {
    session = await startEditorSession();
  });
  afterAll(() => session?.end());
  beforeEach(async () => {
    session.resetFolder();
    page = await session.browser.newPage();
    errors = watchConsoleErrors(page);
  });
  afterEach(async ({ task }) => {
    if (task.result?.state === 'fail') await page.screenshot({ path: join(failureFolder, `${task.name}.png`) });
    const found = [...errors]; // leaving makes an error of its own
    await page?.close();
    expect(found).toEqual([]);
  });

  it('the Problems panel shows severity, message, source, rule name and place', async () => {
    await openSite();
    await expect
      .poll(() => problems(page), { timeout: 20_000 })
      .toContainEqual({
        severity: 'Warning',
        message: expect.stringMatching(/K/),
        source: 'dewright',
        code: 'difference-in-degrees',
        place: '[Ln 22, Col 41]',
      });
  });

  it('the link of a finding opens the page of its rule, rendered', async () => {
    await openSite();
    await problems(page);
    await page.locator('.markers-panel a', { hasText: 'difference-in-degrees' }).click();
    await pageOfRule(page, 'difference-in-degrees');
  });

  it('a rule chosen by the command is explained', async () => {
    await openSite();
    await runCommand(page, 'Dewright: Explain This Rule');
    await page.locator('.quick-input-list .monaco-list-row', { hasText: 'reference-unknown' }).click();
    await pageOfRule(page, 'reference-unknown');
  });

  it('a hover shows the numbers of a space', async () => {
    await openSite();
    const hover = await hoverAt(page, placeOf('temperature: 55'));
    await hover.filter({ hasText: '°C' }).waitFor();
    expect(await hover.textContent()).toMatch(/\d/);
  });

  it('a quick fix by keyboard ends on disk', async () => {
    await openSite();
    await page.locator('.squiggly-warning').first().waitFor({ state: 'attached' });
    const menu = await quickFixes(page, placeOf('8 degC, set-at'));
    await menu.locator('.monaco-list-row.action').first().waitFor();
    await page.keyboard.press('Enter');
    await save(page);
    await expect.poll(siteOnDisk).toContain('rise: 8 K,');
  });

  it('with the setting for it, saving makes every safe fix', async () => {
    const settings = { 'editor.codeActionsOnSave': { 'source.fixAll.dewright': 'explicit' } };
    mkdirSync(join(session.folder, '.vscode'));
    writeFileSync(join(session.folder, '.vscode/settings.json'), JSON.stringify(settings));
    await openSite();
    await page.locator('.squiggly-warning').first().waitFor({ state: 'attached' });
    await goTo(page, placeOf('Fennmoor Timber'));
    await page.keyboard.type('At ');
    await save(page);
    await expect.poll(siteOnDisk).toContain('rise: 8 K,');
    expect(siteOnDisk()).toContain('title: At Fennmoor Timber');
  });

  function openSite(): Promise<void> {
    return openWorkbench(page, session.server, session.folder, siteFile);
  }

  function siteOnDisk(): string {
    return readFileSync(join(session.folder, siteFile), 'utf8');
  }

  function placeOf(words: string): Place {
    const before = siteOnDisk().split(words)[0]?.split('\n') ?? [];
    return { line: before.length, column: (before.at(-1) ?? '').length + 1 };
  }
});

/** Waits until a rule's page is shown as a rendered document. */
async function pageOfRule(page: Page, rule: string): Promise<void> {
  await page.locator('.tab.active', { hasText: `${rule}.md` }).waitFor();
  await expect
    .poll(
      async () =>
        Promise.all(
          page.frames().map((frame) =>
            frame
              .locator('h1')
              .allTextContents()
              .catch(() => []),
          ),
        ),
      {
        timeout: 20_000,
      },
    )
    .toContainEqual([expect.stringContaining(rule)]);
}
