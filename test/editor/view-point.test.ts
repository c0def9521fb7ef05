import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Frame, Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { withPageForEachTest } from './page-of-test.ts';
import { describeInEditor, type RunningEditor } from './running-editor.ts';
import { accessibilityFaults, openView, viewWith } from './webview-page.ts';
import { goTo, openWorkbench, placeIn, runCommand, save } from './workbench-page.ts';

const SITE_FILE = 'fennmoor.dewsite.yaml';
const RISE = 'input[name="points/K2-MT-101/humidity-probe/heater/rise"]';
const THEMES = ['Default Light Modern', 'Default Dark Modern', 'Default High Contrast', 'Default High Contrast Light'];

describeInEditor('the views of points', () => {
  let editor: RunningEditor;
  let page: Page;

  withPageForEachTest((running, opened) => {
    editor = running;
    page = opened;
  });

  it('the point of the cursor is shown: what is found, what to expect, how uncertain it is', async () => {
    const view = await openPoint();
    await view.locator('h1', { hasText: 'K2-MT-101' }).waitFor();
    await view.locator('li', { hasText: '(air-temperature-missing)' }).waitFor();
    const rows = await view.locator('table tr').allInnerTexts();
    expect(rows).toContainEqual(
      expect.stringMatching(/^Highest humidity at the sensor\s+6\d(\.\d)? %RH\s+78 °C and 88 %RH/),
    );
    await goTo(page, placeIn(site(), 'K2-MT-102:'));
    await view.locator('h1', { hasText: 'K2-MT-102' }).waitFor();
  });

  it('a finding leads to its place', async () => {
    const view = await openPoint();
    await view.locator('li [data-file]', { hasText: 'The relative humidity needs the air temperature' }).click();
    await page.locator('.statusbar-item', { hasText: 'Ln 24' }).first().waitFor();
  });

  it('the lens above a point opens its view', async () => {
    await openSite();
    await page.locator('.codelens-decoration a', { hasText: 'Section and uncertainties' }).nth(1).click();
    await viewWith(page, 'h1:has-text("K2-MT-102")');
  });

  it('another rise makes a finding come and go, is written when asked for, and undone at once', async () => {
    await openSite();
    await goTo(page, placeIn(site(), 'K2-MT-101:'));
    const view = await openView(page, 'Dewright: Try Other Values', RISE);
    const short = view.locator('li[data-rule=heater-rise-short]');
    await view.locator(RISE).fill('1 K');
    await short.waitFor();
    await view.locator(RISE).fill('6 K');
    await short.waitFor({ state: 'detached' });
    await view.locator(RISE).fill('5');
    await view.locator('.problem', { hasText: '“5” needs a unit: K' }).waitFor();
    await view.locator(RISE).fill('6 K');
    const before = site();
    await view.locator('button[data-action=write]').click();
    await page.locator('.view-line', { hasText: 'rise: 6 K' }).click();
    await save(page);
    await expect.poll(site).toBe(before.replace('rise: 8 K', 'rise: 6 K'));
    await view.locator('h2', { hasText: 'Findings of the file as it is' }).waitFor();
    await runCommand(page, 'Undo');
    await page.locator('.view-line', { hasText: 'rise: 6 K' }).waitFor({ state: 'detached' });
    await save(page);
    await expect.poll(site).toBe(before);
  });

  it('all points stand in one table that sorts, filters and leads to the files', async () => {
    await openSite();
    const view = await openOverview();
    const tags = () => view.locator('tbody tr:visible td:first-child').allInnerTexts();
    expect(await tags()).toEqual(['K2-MT-101', 'K2-MT-101', 'K2-MT-102']);
    await view.locator('th button', { hasText: /^Point$/ }).click();
    await view.locator('th button', { hasText: /^Point$/ }).click();
    expect(await tags()).toEqual(['K2-MT-102', 'K2-MT-101', 'K2-MT-101']);
    await view.locator('input[type=search]').fill('102 humidity');
    expect(await tags()).toEqual(['K2-MT-102']);
    await view.locator('td [data-file]:visible').click();
    await page.locator('.statusbar-item', { hasText: 'Ln 28' }).first().waitFor();
  });

  it.each(THEMES)('%s: nothing hinders people from using them', async (theme) => {
    mkdirSync(join(editor.folder, '.vscode'));
    writeFileSync(join(editor.folder, '.vscode/settings.json'), JSON.stringify({ 'workbench.colorTheme': theme }));
    await openSite();
    await goTo(page, placeIn(site(), 'K2-MT-101:'));
    expect(await accessibilityFaults(await openView(page, 'Dewright: Show the Point', 'table'))).toEqual([]);
    expect(await accessibilityFaults(await openView(page, 'Dewright: Try Other Values', RISE))).toEqual([]);
    expect(await accessibilityFaults(await openOverview())).toEqual([]);
  });

  async function openSite(): Promise<void> {
    await openWorkbench(page, editor.server, editor.folder, SITE_FILE);
    await page.locator('.squiggly-error').first().waitFor({ state: 'attached' });
  }

  async function openPoint(): Promise<Frame> {
    await openSite();
    await goTo(page, placeIn(site(), 'K2-MT-101:'));
    return openView(page, 'Dewright: Show the Point', 'table');
  }

  function openOverview(): Promise<Frame> {
    return openView(page, 'Dewright: Show the Overview of All Points', '#all-points');
  }

  function site(): string {
    return readFileSync(join(editor.folder, SITE_FILE), 'utf8');
  }
});
