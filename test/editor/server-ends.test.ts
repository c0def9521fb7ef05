import { spawnSync } from 'node:child_process';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { openSite, placeInSite } from './faulty-site.ts';
import { type EditorOfTest, itInEditor } from './page-of-test.ts';
import { describeInEditor } from './running-editor.ts';
import { goTo, problems, runCommand } from './workbench-page.ts';

const it = itInEditor();

describeInEditor('when the language server', () => {
  it.beforeEach(async ({ page, editor }) => {
    await expect.poll(() => serverProcesses(editor)).toEqual([]); // that of the page before
    await openSite(page, editor);
  });

  it('is killed in the middle of an edit, it comes back and knows what was typed', async ({ page, editor }) => {
    const killed = theServer(editor);
    await typeBefore(page, editor, '78 degC', 'zz');
    process.kill(killed, 'SIGKILL');
    await page.keyboard.type('top');
    await expect.poll(() => messages(page)).toContainEqual(expect.stringContaining('zztop'));
    await expectOneOtherThan(editor, killed);
  });

  it('hangs, the command to restart ends it and starts another', async ({ page, editor }) => {
    const hanging = theServer(editor);
    process.kill(hanging, 'SIGSTOP');
    await typeBefore(page, editor, '78 degC', 'zztop');
    await runCommand(page, 'Dewright: Restart the Language Server');
    await expect.poll(() => messages(page)).toContainEqual(expect.stringContaining('zztop'));
    await expectOneOtherThan(editor, hanging);
  });
});

async function messages(page: Page): Promise<readonly string[]> {
  return (await problems(page)).map(({ message }) => message);
}

async function typeBefore(page: Page, editor: EditorOfTest, words: string, typed: string): Promise<void> {
  await goTo(page, placeInSite(editor, words));
  await page.keyboard.type(typed);
}

/** Those of this editor alone: their program lies in its folder. */
function serverProcesses({ server }: EditorOfTest): readonly number[] {
  const { stdout } = spawnSync('pgrep', ['-f', `${server.dataFolder}.*hosted.js`], { encoding: 'utf8' });
  return [...stdout.matchAll(/\d+/g)].map(Number);
}

function theServer(editor: EditorOfTest): number {
  const [server, ...others] = serverProcesses(editor);
  if (server === undefined || others.length > 0) throw new Error('there is not one server');
  return server;
}

async function expectOneOtherThan(editor: EditorOfTest, ended: number): Promise<void> {
  await expect.poll(() => serverProcesses(editor).map((server) => server === ended)).toEqual([false]);
}
