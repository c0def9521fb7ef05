import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeInEditor, type RunningEditor, startEditor } from './running-editor.ts';
import { openWorkbench, problems } from './workbench-page.ts';

describeInEditor('in a folder that the user does not trust', () => {
  let editor: RunningEditor;

  beforeAll(async () => {
    editor = await startEditor({ restricted: true });
  });
  afterAll(() => editor?.end());

  it('files are checked all the same', async () => {
    const page = await editor.browser.newPage();
    await openWorkbench(page, editor.server, editor.folder, 'fennmoor.dewsite.yaml');
    await page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).waitFor();
    const rules = async () => (await problems(page)).map((problem) => problem.code);
    await expect.poll(rules, { timeout: 20_000 }).toContain('air-temperature-missing');
  });
});
