import { expect } from 'vitest';
import { openSite } from './faulty-site.ts';
import { itInEditor } from './page-of-test.ts';
import { describeInEditor } from './running-editor.ts';
import { openView } from './webview-page.ts';
import { problems } from './workbench-page.ts';

const it = itInEditor({ restricted: true });

describeInEditor('in a folder that the user does not trust', () => {
  it('files are checked, and the chart is shown, all the same', async ({ page, editor }) => {
    await openSite(page, editor);
    await page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).waitFor();
    const rules = async () => (await problems(page)).map((problem) => problem.code);
    await expect.poll(rules).toContain('air-temperature-missing');
    await openView(page, 'Dewright: Show the Moist-Air Chart', 'svg.drawing');
  });
});
