import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, inject } from 'vitest';
import { openSite } from './faulty-site.ts';
import { itInEditor } from './page-of-test.ts';
import { describeInEditor } from './running-editor.ts';
import { viewIn } from './webview-page.ts';
import { repeatUntil, runCommand } from './workbench-page.ts';

const LARGEST_PACKAGE = 500_000;

const it = itInEditor();

describeInEditor('what guides a user', () => {
  it('the language status counts points and findings, and leads to the Problems panel', async ({ page, editor }) => {
    await openSite(page, editor);
    const status = page.locator('.hover-language-status', { hasText: /Points: 2, findings: [1-9]/ });
    /** All of it anew: the editor closes the status where it draws the bar anew. */
    await repeatUntil(async (within) => {
      await page.mouse.move(0, 0); // a pointer that stays where it is asks for nothing
      await page.locator('#status\\.languageStatus').hover(within);
      await status.locator('a', { hasText: 'Show Problems' }).click(within);
    }, page.locator('.markers-panel .marker-message').first());
  });

  it('the walkthrough shows its steps and their pages', async ({ page, editor }) => {
    await openSite(page, editor);
    await openWalkthrough(page, 'From a New Site File');
    const titles = page.locator('.gettingStartedContainer .step-title');
    await expect
      .poll(() => titles.allTextContents())
      .toEqual([
        'Start a site file',
        'Describe the equipment',
        'Read the computed numbers',
        'Mend the findings',
        'Arrive at a clean point',
      ]);
    await viewIn(page).locator('body', { hasText: 'says which spaces there are' }).waitFor();
  });

  it('in a German editor commands, questions and the walkthrough are German', async ({ page, editor }) => {
    await speakGerman(page);
    await openSite(page, editor);
    await openWalkthrough(page, 'Von einer neuen Anlagendatei');
    await viewIn(page).locator('body', { hasText: 'sagt, welche Räume es gibt' }).waitFor();
    await runCommand(page, 'Dewright: Diese Regel erklären');
    await page.locator('.quick-input-widget input[placeholder="Regel, die erklärt werden soll"]').waitFor();
  });

  it('the page of the extension shows nothing and leads nowhere that is not packed with it', ({ editor }) => {
    const [installed = ''] = readdirSync(join(editor.server.dataFolder, 'extensions')).filter((name) =>
      name.startsWith('dewright.'),
    );
    const folder = join(editor.server.dataFolder, 'extensions', installed);
    const page = readFileSync(join(folder, 'readme.md'), 'utf8');
    expect(page).toMatch(/^# Dewright\n/);
    const targets = [...page.matchAll(/\]\(([^)]+)\)/g)].map(([, target = '']) => target);
    expect(targets.filter((target) => !existsSync(join(folder, target)))).toEqual([]);
  });

  it('the packed extension is smaller than half a megabyte', () => {
    const packed = inject('editor');
    expect(packed.ok && statSync(packed.value.vsix).size).toBeLessThan(LARGEST_PACKAGE);
  });
});

async function openWalkthrough(page: Page, title: string): Promise<void> {
  await runCommand(page, 'Welcome: Open Walkthrough...');
  await page.locator('.quick-input-list .monaco-list-row', { hasText: title }).click();
}

/** As a language pack would: the workbench then asks extensions for their German texts. */
async function speakGerman(page: Page): Promise<void> {
  await page.route('**/out/nls.messages.js', async (route) => {
    const response = await route.fetch();
    const body = `${await response.text()}\n;globalThis._VSCODE_NLS_LANGUAGE = 'de';`;
    await route.fulfill({ response, body });
  });
}
