import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { commitFolder } from './committed-folder.ts';
import { openSite, placeInSite } from './faulty-site.ts';
import { setForFolder } from './folder-settings.ts';
import { itInEditor } from './page-of-test.ts';
import { describeInEditor } from './running-editor.ts';
import { accessibilityFaults, openView } from './webview-page.ts';
import { goTo, repeatUntil, runCommand } from './workbench-page.ts';

const CHANGES = 'Dewright: Show What Has Changed in Meaning';

const it = itInEditor();

describeInEditor('what has changed, and the handover pack', () => {
  it('without a repository the changes say that nothing is committed', async ({ page, editor }) => {
    await openSite(page, editor);
    const view = await openView(page, CHANGES, 'select[name=against]');
    await view.locator('p', { hasText: 'There is no committed version to compare with' }).waitFor();
    expect(await accessibilityFaults(view)).toEqual([]);
  });

  it('in a repository they tell what is typed, against the last commit', async ({ page, editor }) => {
    setForFolder(editor.folder, { 'git.enabled': true }); // the other tests do without
    commitFolder(editor.folder);
    await openSite(page, editor);
    const view = await openView(page, CHANGES, 'select[name=against]');
    await view.locator('p', { hasText: 'Nothing has changed in meaning.' }).waitFor();
    await goTo(page, placeInSite(editor, '8 K'));
    await page.keyboard.press('Delete');
    await page.keyboard.type('9');
    await view.locator('li', { hasText: 'humidity-probe.heater.rise: 8 K → 9 K' }).waitFor();
    await view.locator('h3', { hasText: 'because humidity-probe.heater.rise: 8 K → 9 K' }).first().waitFor();
    expect(await accessibilityFaults(view)).toEqual([]);
  });

  it('the pack of the open site is written where the user says', async ({ page, editor }) => {
    await openSite(page, editor);
    await runCommand(page, 'Dewright: Write the Handover Pack');
    const place = page.locator('.quick-input-widget input.input').filter({ visible: true });
    await expect.poll(() => place.inputValue()).toMatch(/fennmoor\.html$/);
    const pack = join(editor.folder, 'kiln.html');
    await place.fill(pack);
    await repeatUntil(() => page.keyboard.press('Enter'), place, 'hidden');
    await page.locator('.notification-toast', { hasText: 'The pack is written: kiln.html' }).waitFor();
    expect(readFileSync(pack, 'utf8')).toMatch(/^<!doctype html>[\s\S]*handover pack/);
    expect(existsSync(join(editor.folder, 'fennmoor.html'))).toBe(false);
  });
});
