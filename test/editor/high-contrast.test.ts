import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeInEditor, type RunningEditor, startEditor } from './running-editor.ts';
import { hoverAt, openWorkbench, placeIn } from './workbench-page.ts';

const SITE_FILE = 'fennmoor.dewsite.yaml';

/** The page has it; the types of Node do not know it. */
declare function getComputedStyle(element: unknown): { readonly borderBottomStyle: string };

describeInEditor('in a high-contrast theme', () => {
  let editor: RunningEditor;

  beforeAll(async () => {
    editor = await startEditor();
    mkdirSync(join(editor.folder, '.vscode'));
  });
  afterAll(() => editor?.end());

  it.each([
    { theme: 'Default High Contrast', kind: 'hc-black' },
    { theme: 'Default High Contrast Light', kind: 'hc-light' },
  ])('$theme: findings are underlined, and a hover shows', async ({ theme, kind }) => {
    writeFileSync(join(editor.folder, '.vscode/settings.json'), JSON.stringify({ 'workbench.colorTheme': theme }));
    const page = await editor.browser.newPage();
    await openWorkbench(page, editor.server, editor.folder, SITE_FILE);
    await page.locator(`.monaco-workbench.${kind}`).waitFor();
    const squiggle = page.locator('.squiggly-error').first();
    await squiggle.waitFor({ state: 'attached' });
    expect(await squiggle.evaluate((element) => getComputedStyle(element).borderBottomStyle)).toBe('double');
    const site = readFileSync(join(editor.folder, SITE_FILE), 'utf8');
    const hover = await hoverAt(page, placeIn(site, 'K2-MT-101:'));
    await hover.filter({ hasText: 'Highest dew point' }).waitFor();
    await page.close();
  });
});
