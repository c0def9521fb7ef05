/** What the extension adds to the editor can be reached, heard and left without a pointer. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { beforeEach, expect, it } from 'vitest';
import { withPageForEachTest } from './page-of-test.ts';
import { describeInEditor, type RunningEditor } from './running-editor.ts';
import { openView } from './webview-page.ts';
import { openWorkbench, placeIn, pressUntilVisible, runCommand } from './workbench-page.ts';

const SITE_FILE = 'fennmoor.dewsite.yaml';
const MOST_STOPS = 30;

describeInEditor('by keyboard alone', () => {
  let editor: RunningEditor;
  let page: Page;

  withPageForEachTest((running, opened) => {
    editor = running;
    page = opened;
  });
  beforeEach(async () => {
    await openWorkbench(page, editor.server, editor.folder, SITE_FILE);
    await page.locator('.squiggly-error').first().waitFor({ state: 'attached' });
  });

  it('the language status says its counts, and leads to the Problems panel', async () => {
    await page.getByRole('button', { name: /Points: 2, findings: [1-9]/ }).waitFor();
    await runCommand(page, 'View: Focus Status Bar');
    await pressUntilThere('ArrowRight', page.locator('#status\\.languageStatus a:focus'));
    const status = page.locator('.hover-language-status', { hasText: 'Points' });
    await pressUntilVisible(page, ['Enter'], status);
    await pressUntilThere('Tab', status.locator('a:focus', { hasText: 'Show Problems' }));
    await page.keyboard.press('Enter');
    await page.locator('.markers-panel :focus').waitFor();
  });

  it('what stands in a view is reached from the file, says what it is, and leads back', async () => {
    const view = await openView(page, 'Dewright: Show the Moist-Air Chart', 'svg.drawing');
    const hasFocus = async () => {
      await page.keyboard.press('Control+2'); // to the second group of editors
      return view.evaluate('document.hasFocus()');
    };
    await expect.poll(hasFocus).toBe(true);
    const sensors = view.getByRole('link', { name: 'K2-MT-101, K2-MT-102: sensor at' });
    await pressUntilThere('Tab', sensors.and(view.locator(':focus')));
    expect(await view.locator('[aria-live=polite]').textContent()).toMatch(/^K2-MT-101, K2-MT-102: sensor at/);
    await page.keyboard.press('Enter');
    const { line, column } = placeIn(readFileSync(join(editor.folder, SITE_FILE), 'utf8'), '8 K');
    await page.locator('.statusbar-item', { hasText: `Ln ${line}, Col ${column}` }).waitFor();
    await page.locator('.monaco-editor.focused').waitFor();
  });

  async function pressUntilThere(key: string, focused: Locator): Promise<void> {
    for (let left = MOST_STOPS; left > 0 && (await focused.count()) === 0; left--) await page.keyboard.press(key);
    await focused.waitFor();
  }
});
