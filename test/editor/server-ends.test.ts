import { spawnSync } from 'node:child_process';
import type { Page } from 'playwright-core';
import { beforeEach, expect, it } from 'vitest';
import { openSite, placeInSite } from './faulty-site.ts';
import { type EditorOfTest, withPageForEachTest } from './page-of-test.ts';
import { describeInEditor } from './running-editor.ts';
import { goTo, problems, runCommand } from './workbench-page.ts';

describeInEditor('when the language server', () => {
  let editor: EditorOfTest;
  let page: Page;

  withPageForEachTest((running, opened) => {
    editor = running;
    page = opened;
  });
  beforeEach(async () => {
    await expect.poll(serverProcesses).toEqual([]); // that of the page before
    await openSite(page, editor);
  });

  it('is killed in the middle of an edit, it comes back and knows what was typed', async () => {
    const killed = theServer();
    await typeBefore('78 degC', 'zz');
    process.kill(killed, 'SIGKILL');
    await page.keyboard.type('top');
    await expect.poll(messages).toContainEqual(expect.stringContaining('zztop'));
    await expectOneOtherThan(killed);
  });

  it('hangs, the command to restart ends it and starts another', async () => {
    const hanging = theServer();
    process.kill(hanging, 'SIGSTOP');
    await typeBefore('78 degC', 'zztop');
    await runCommand(page, 'Dewright: Restart the Language Server');
    await expect.poll(messages).toContainEqual(expect.stringContaining('zztop'));
    await expectOneOtherThan(hanging);
  });

  async function messages(): Promise<readonly string[]> {
    return (await problems(page)).map(({ message }) => message);
  }

  async function typeBefore(words: string, typed: string): Promise<void> {
    await goTo(page, placeInSite(editor, words));
    await page.keyboard.type(typed);
  }

  /** Those of this editor alone: their program lies in its folder. */
  function serverProcesses(): readonly number[] {
    const { stdout } = spawnSync('pgrep', ['-f', `${editor.server.dataFolder}.*hosted.js`], { encoding: 'utf8' });
    return [...stdout.matchAll(/\d+/g)].map(Number);
  }

  function theServer(): number {
    const [server, ...others] = serverProcesses();
    if (server === undefined || others.length > 0) throw new Error('there is not one server');
    return server;
  }

  async function expectOneOtherThan(ended: number): Promise<void> {
    await expect.poll(() => serverProcesses().map((server) => server === ended)).toEqual([false]);
  }
});
