/** What the extension adds to the editor can be reached, heard and left without a pointer. */
import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import { openSite, placeInSite } from './faulty-site.ts';
import { itInEditor } from './page-of-test.ts';
import { describeInEditor } from './running-editor.ts';
import { openView } from './webview-page.ts';
import { cursorAt, PATIENCE, repeatUntil, runCommand, type Within } from './workbench-page.ts';

const MOST_STOPS = 30;

const it = itInEditor();

describeInEditor('by keyboard alone', () => {
  it.beforeEach(({ page, editor }) => openSite(page, editor));

  it('the language status says its counts, and leads to the Problems panel', async ({ page }) => {
    await page.getByRole('button', { name: /Points: 2, findings: [1-9]/ }).waitFor();
    const status = page.locator('.hover-language-status', { hasText: 'Points' });
    /** All of it anew: the editor closes the status where it draws the bar anew. */
    await repeatUntil(async (within) => {
      await runCommand(page, 'View: Focus Status Bar');
      await pressUntilThere(page, 'ArrowRight', page.locator('#status\\.languageStatus a:focus'), within);
      await page.keyboard.press('Enter');
      await status.waitFor(within);
      await pressUntilThere(page, 'Tab', status.locator('a:focus', { hasText: 'Show Problems' }), within);
      await page.keyboard.press('Enter');
    }, page.locator('.markers-panel :focus'));
  });

  it('what stands in a view is reached from the file, says what it is, and leads back', async ({ page, editor }) => {
    const view = await openView(page, 'Dewright: Show the Moist-Air Chart', 'svg.drawing');
    const hasFocus = async () => {
      await page.keyboard.press('Control+2'); // to the second group of editors
      return view.locator('body').evaluate('document.hasFocus()');
    };
    await expect.poll(hasFocus).toBe(true);
    const sensors = view.getByRole('link', { name: 'K2-MT-101, K2-MT-102: sensor at' });
    await pressUntilThere(page, 'Tab', sensors.and(view.locator(':focus')), { timeout: PATIENCE });
    await view.locator('[aria-live=polite]', { hasText: /^K2-MT-101, K2-MT-102: sensor at/ }).waitFor();
    await page.keyboard.press('Enter');
    await cursorAt(page, placeInSite(editor, '8 K')).waitFor();
    await page.locator('.monaco-editor.focused').waitFor();
  });
});

async function pressUntilThere(page: Page, key: string, focused: Locator, within: Within): Promise<void> {
  for (let left = MOST_STOPS; left > 0 && (await focused.count()) === 0; left--) await page.keyboard.press(key);
  await focused.waitFor(within);
}
