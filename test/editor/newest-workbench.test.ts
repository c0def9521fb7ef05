/** What users do most, in the newest VS Code; the other tests of the workbench run in the oldest. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import { watchConsoleErrors } from './console-errors.ts';
import { describeInNewestEditor, type RunningEditor, startEditor } from './running-editor.ts';
import { NEWEST_RELEASE } from './setup-workbench.ts';
import { accessibilityFaults, openView } from './webview-page.ts';
import { hoverAt, openWorkbench, placeIn, problems, save, takeQuickFix } from './workbench-page.ts';

const SITE_FILE = 'fennmoor.dewsite.yaml';

describeInNewestEditor(`in the workbench of VS Code ${NEWEST_RELEASE.version}`, () => {
  let editor: RunningEditor;
  let page: Page;
  let errors: readonly string[];

  beforeAll(async () => {
    editor = await startEditor({ isNewest: true });
  });
  afterAll(() => editor?.end());
  beforeEach(async () => {
    editor.resetFolder();
    page = await editor.browser.newPage();
    errors = watchConsoleErrors(page);
    await openWorkbench(page, editor.server, editor.folder, SITE_FILE);
    await page.locator('.squiggly-error').first().waitFor({ state: 'attached' });
  });
  afterEach(async () => {
    const found = [...errors]; // leaving makes an error of its own
    await page?.close();
    expect(found).toEqual([]);
  });

  it('a finding stands in the Problems panel, and its quick fix ends on disk', async () => {
    await expect
      .poll(() => problems(page), { timeout: 20_000 })
      .toContainEqual(expect.objectContaining({ severity: 'Error', code: 'air-temperature-missing' }));
    await takeQuickFix(page, placeIn(site(), 'relative-humidity:'), 'Report dew point instead');
    await save(page);
    await expect.poll(site).toMatch(/reports:\n +dew-point: .*\n +supply:/);
  });

  it('a hover shows, and a view opens beside the file and hinders nobody', async () => {
    const hover = await hoverAt(page, placeIn(site(), 'kiln-2:'));
    await hover.filter({ hasText: 'Highest dew point' }).waitFor();
    await page.keyboard.press('Escape');
    const view = await openView(page, 'Dewright: Show the Moist-Air Chart', 'svg.drawing');
    expect(await accessibilityFaults(view)).toEqual([]);
  });

  function site(): string {
    return readFileSync(join(editor.folder, SITE_FILE), 'utf8');
  }
});
