import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeInEditor, type EditorSession, startEditorSession } from './editor-session.ts';
import { openWorkbench, problems } from './workbench-page.ts';

describeInEditor('in a folder that the user does not trust', () => {
  let session: EditorSession;

  beforeAll(async () => {
    session = await startEditorSession({ restricted: true });
  });
  afterAll(() => session?.end());

  it('files are checked all the same', async () => {
    const page = await session.browser.newPage();
    await openWorkbench(page, session.server, session.folder, 'fennmoor.dewsite.yaml');
    await page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).waitFor();
    const rules = async () => (await problems(page)).map((problem) => problem.code);
    await expect.poll(rules, { timeout: 20_000 }).toContain('air-temperature-missing');
  });
});
