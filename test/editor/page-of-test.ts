/** One editor for the tests of a block, and for each of them a folder and a page of its own. */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect } from 'vitest';
import { watchConsoleErrors } from './console-errors.ts';
import { CACHE_FOLDER } from './paths.ts';
import { copyOfWorkspace, type EditorOptions, type RunningEditor, startEditor } from './running-editor.ts';
import { PATIENCE } from './workbench-page.ts';

/** What the page showed when a test failed. */
const FAILURE_FOLDER = join(CACHE_FOLDER, 'failed');

/** px: so high that the Problems panel has room for all rows, which it draws only where they are in sight. */
const VIEWPORT = { width: 1280, height: 1800 };

export interface EditorOfTest extends RunningEditor {
  /** A copy of the faulty workspace, to change at will. A new one each time, for the editor keeps what was not saved. */
  readonly folder: string;
}

/**
 * Call it inside of `describeInEditor`. A test fails where its page told an error on the console.
 * @param use takes the editor with the new folder, and the new page, before each test
 */
export function withPageForEachTest(
  use: (editor: EditorOfTest, page: Page) => void,
  options: EditorOptions = {},
): void {
  let editor: RunningEditor;
  let page: Page;
  let folder: string;
  let errors: readonly string[];

  beforeAll(async () => {
    editor = await startEditor(options);
  });
  afterAll(() => editor?.end());
  beforeEach(async () => {
    folder = copyOfWorkspace();
    page = await editor.browser.newPage({ viewport: VIEWPORT });
    page.setDefaultTimeout(PATIENCE);
    errors = watchConsoleErrors(page);
    use({ ...editor, folder }, page);
  });
  afterEach(async ({ task }) => {
    if (task.result?.state === 'fail') await page.screenshot({ path: join(FAILURE_FOLDER, `${task.name}.png`) });
    const found = [...errors]; // leaving makes an error of its own
    await page?.close();
    rmSync(folder, { recursive: true, maxRetries: 5 });
    expect(found).toEqual([]);
  });
}
