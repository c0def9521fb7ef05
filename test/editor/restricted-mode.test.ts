import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { openSite } from './faulty-site.ts';
import { type EditorOfTest, withPageForEachTest } from './page-of-test.ts';
import { describeInEditor } from './running-editor.ts';
import { openView } from './webview-page.ts';
import { problems } from './workbench-page.ts';

describeInEditor('in a folder that the user does not trust', () => {
  let editor: EditorOfTest;
  let page: Page;

  withPageForEachTest(
    (running, opened) => {
      editor = running;
      page = opened;
    },
    { restricted: true },
  );

  it('files are checked, and the chart is shown, all the same', async () => {
    await openSite(page, editor);
    await page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).waitFor();
    const rules = async () => (await problems(page)).map((problem) => problem.code);
    await expect.poll(rules).toContain('air-temperature-missing');
    await openView(page, 'Dewright: Show the Moist-Air Chart', 'svg.drawing');
  });
});
