import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { commitFolder } from './committed-folder.ts';
import { withPageForEachTest } from './page-of-test.ts';
import { describeInEditor, type RunningEditor } from './running-editor.ts';
import { accessibilityFaults, openView } from './webview-page.ts';
import { goTo, openWorkbench, placeIn, pressUntilVisible, runCommand } from './workbench-page.ts';

const SITE_FILE = 'fennmoor.dewsite.yaml';
const CHANGES = 'Dewright: Show What Has Changed in Meaning';

describeInEditor('what has changed, and the handover pack', () => {
  let editor: RunningEditor;
  let page: Page;

  withPageForEachTest((running, opened) => {
    editor = running;
    page = opened;
  });

  it('without a repository the changes say that nothing is committed', async () => {
    await openSite();
    const view = await openView(page, CHANGES, 'select[name=against]');
    await view.locator('p', { hasText: 'There is no committed version to compare with' }).waitFor();
    expect(await accessibilityFaults(view)).toEqual([]);
  });

  it('in a repository they tell what is typed, against the last commit', async () => {
    enableGit();
    commitFolder(editor.folder);
    await openSite();
    const view = await openView(page, CHANGES, 'select[name=against]');
    await view.locator('p', { hasText: 'Nothing has changed in meaning.' }).waitFor();
    await goTo(page, placeIn(siteText(), '8 K'));
    await page.keyboard.press('Delete');
    await page.keyboard.type('9');
    await view.locator('li', { hasText: 'humidity-probe.heater.rise: 8 K → 9 K' }).waitFor();
    await view.locator('h3', { hasText: 'because humidity-probe.heater.rise: 8 K → 9 K' }).first().waitFor();
    expect(await accessibilityFaults(view)).toEqual([]);
  });

  it('the pack of the open site is written where the user says', async () => {
    await openSite();
    await runCommand(page, 'Dewright: Write the Handover Pack');
    const place = page.locator('.quick-input-widget input.input').filter({ visible: true });
    await expect.poll(() => place.inputValue(), { timeout: 20_000 }).toMatch(/fennmoor\.html$/);
    const pack = join(editor.folder, 'kiln.html');
    await place.fill(pack);
    const said = page.locator('.notification-toast', { hasText: 'The pack is written: kiln.html' });
    await pressUntilVisible(page, ['Enter'], said);
    expect(readFileSync(pack, 'utf8')).toMatch(/^<!doctype html>[\s\S]*handover pack/);
    expect(existsSync(join(editor.folder, 'fennmoor.html'))).toBe(false);
  });

  /** The other tests of the editor do without its git. */
  function enableGit(): void {
    mkdirSync(join(editor.folder, '.vscode'), { recursive: true });
    writeFileSync(join(editor.folder, '.vscode/settings.json'), JSON.stringify({ 'git.enabled': true }));
  }

  async function openSite(): Promise<void> {
    await openWorkbench(page, editor.server, editor.folder, SITE_FILE);
    await page.locator('.squiggly-error').first().waitFor({ state: 'attached' });
  }

  function siteText(): string {
    return readFileSync(join(editor.folder, SITE_FILE), 'utf8');
  }
});
