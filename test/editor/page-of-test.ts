/** One editor for the tests of a block, and for each of them the folder as it was at first and a page of its own. */
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect } from 'vitest';
import { watchConsoleErrors } from './console-errors.ts';
import { CACHE_FOLDER } from './paths.ts';
import { type RunningEditor, startEditor } from './running-editor.ts';

/** What the page showed when a test failed. */
const FAILURE_FOLDER = join(CACHE_FOLDER, 'failed');

/**
 * Call it inside of `describeInEditor`. A test fails where its page told an error on the console.
 * @param use takes the editor and the new page before each test
 */
export function withPageForEachTest(use: (editor: RunningEditor, page: Page) => void): void {
  let editor: RunningEditor;
  let page: Page;
  let errors: readonly string[];

  beforeAll(async () => {
    editor = await startEditor();
  });
  afterAll(() => editor?.end());
  beforeEach(async () => {
    editor.resetFolder();
    page = await editor.browser.newPage();
    errors = watchConsoleErrors(page);
    use(editor, page);
  });
  afterEach(async ({ task }) => {
    if (task.result?.state === 'fail') await page.screenshot({ path: join(FAILURE_FOLDER, `${task.name}.png`) });
    const found = [...errors]; // leaving makes an error of its own
    await page?.close();
    expect(found).toEqual([]);
  });
}
