/** One editor for the tests of a file, and for each of them a folder and a page of its own. */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
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
 * `it` for inside of `describeInEditor`, with `editor` and `page`. Only what a test asks for is started: the editor once,
 * until the file ends, the others for each test. A test fails where its page told an error on the console.
 */
export function itInEditor(options: EditorOptions = {}) {
  return it
    .extend('options', { scope: 'file' }, options)
    .extend('running', { scope: 'file' }, async ({ options }, { onCleanup }) => {
      const running = await startEditor(options);
      onCleanup(() => running.end());
      return running;
    })
    .extend('editor', ({ running }, { onCleanup }): EditorOfTest => {
      const folder = copyOfWorkspace();
      onCleanup(() => rmSync(folder, { recursive: true, maxRetries: 5 }));
      return { ...running, folder };
    })
    .extend('page', async ({ editor, task }, { onCleanup }) => {
      const page = await editor.browser.newPage({ viewport: VIEWPORT });
      page.setDefaultTimeout(PATIENCE);
      const errors = watchConsoleErrors(page);
      onCleanup(async () => {
        if (task.result?.state === 'fail') await page.screenshot({ path: join(FAILURE_FOLDER, `${task.name}.png`) });
        const found = [...errors]; // leaving makes an error of its own
        await page.close();
        expect.soft(found).toEqual([]); // throws nothing: the folder goes after the page
      });
      return page;
    });
}
