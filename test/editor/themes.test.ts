/** What the extension adds to the editor is seen in every theme. */
import { expect } from 'vitest';
import { openSite, placeInSite } from './faulty-site.ts';
import { setForFolder } from './folder-settings.ts';
import { itInEditor } from './page-of-test.ts';
import { describeInEditor } from './running-editor.ts';
import { accessibilityFaults, openView } from './webview-page.ts';
import { goTo, hoverAt } from './workbench-page.ts';

const HIGH_CONTRAST = [
  { theme: 'Default High Contrast', kind: 'hc-black' },
  { theme: 'Default High Contrast Light', kind: 'hc-light' },
];
const THEMES = ['Default Light Modern', 'Default Dark Modern', ...HIGH_CONTRAST.map(({ theme }) => theme)];
const VIEWS = [
  { command: 'Dewright: Show the Moist-Air Chart', expected: 'svg.drawing' },
  { command: 'Dewright: Show the Point', expected: 'h1:has-text("K2-MT-101")' },
  { command: 'Dewright: Try Other Values', expected: 'fieldset' },
  { command: 'Dewright: Show the Overview of All Points', expected: '#all-points' },
];

/** The page has it; the types of Node do not know it. */
declare function getComputedStyle(element: unknown): { readonly borderBottomStyle: string };

const it = itInEditor();

describeInEditor('in the themes of the editor', () => {
  it('in high contrast findings are underlined, and a hover shows', async ({ page, editor }) => {
    setForFolder(editor.folder, { 'workbench.colorTheme': 'Default Light Modern' });
    await openSite(page, editor);
    const underline = () =>
      page
        .locator('.squiggly-error')
        .first()
        .evaluate((element) => getComputedStyle(element).borderBottomStyle);
    for (const { theme, kind } of HIGH_CONTRAST) {
      setForFolder(editor.folder, { 'workbench.colorTheme': theme });
      await page.locator(`.monaco-workbench.${kind}`).waitFor();
      await expect.poll(underline, { message: theme }).toBe('double');
      await hoverAt(page, placeInSite(editor, 'K2-MT-101:'), { hasText: 'Highest dew point' });
    }
  });

  it('in no theme anything hinders people from using a view', async ({ page, editor }) => {
    setForFolder(editor.folder, { 'workbench.colorTheme': 'Default Light Modern' });
    await openSite(page, editor);
    await goTo(page, placeInSite(editor, 'K2-MT-101:'));
    for (const { command, expected } of VIEWS) {
      const view = await openView(page, command, expected);
      for (const theme of THEMES) {
        setForFolder(editor.folder, { 'workbench.colorTheme': theme });
        await view.locator(`body[data-vscode-theme-id="${theme}"]`).waitFor();
        expect(await accessibilityFaults(view), `${command} in ${theme}`).toEqual([]);
      }
    }
  });
});
