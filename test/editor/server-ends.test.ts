import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import { describeInEditor, type RunningEditor, startEditor } from './running-editor.ts';
import { goTo, openWorkbench, placeIn, problems, runCommand } from './workbench-page.ts';

const SITE_FILE = 'fennmoor.dewsite.yaml';
const PATIENCE = { timeout: 30_000 };

describeInEditor('when the language server', () => {
  let editor: RunningEditor;
  let page: Page;

  beforeAll(async () => {
    editor = await startEditor();
  });
  afterAll(() => editor?.end());
  beforeEach(async () => {
    page = await editor.browser.newPage();
    await openWorkbench(page, editor.server, editor.folder, SITE_FILE);
    await expect.poll(messages, PATIENCE).not.toEqual([]);
  });
  afterEach(() => page?.close());

  it('is killed in the middle of an edit, it comes back and knows what was typed', async () => {
    const [killed = 0] = serverProcesses();
    await typeBefore('78 degC', 'zz');
    process.kill(killed, 'SIGKILL');
    await page.keyboard.type('top');
    await expect.poll(messages, PATIENCE).toContainEqual(expect.stringContaining('zztop'));
    expectOneOtherThan(killed);
  });

  it('hangs, the command to restart ends it and starts another', async () => {
    const [hanging = 0] = serverProcesses();
    process.kill(hanging, 'SIGSTOP');
    await typeBefore('78 degC', 'zztop');
    await runCommand(page, 'Dewright: Restart the Language Server');
    await expect.poll(messages, PATIENCE).toContainEqual(expect.stringContaining('zztop'));
    expectOneOtherThan(hanging);
  });

  async function messages(): Promise<readonly string[]> {
    return (await problems(page)).map(({ message }) => message);
  }

  async function typeBefore(words: string, typed: string): Promise<void> {
    await goTo(page, placeIn(readFileSync(join(editor.folder, SITE_FILE), 'utf8'), words));
    await page.keyboard.type(typed);
  }

  /** Those of this editor alone: their program lies in its folder. */
  function serverProcesses(): readonly number[] {
    const found = execFileSync('pgrep', ['-f', `${editor.server.dataFolder}.*hosted.js`], { encoding: 'utf8' });
    return found.trim().split('\n').map(Number);
  }

  function expectOneOtherThan(ended: number): void {
    const [server, ...others] = serverProcesses();
    expect(others).toEqual([]);
    expect(server).not.toBe(ended);
  }
});
