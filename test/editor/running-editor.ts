/** One running editor for the tests of a file. */
import { cpSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { describe, inject } from 'vitest';
import { succeed } from '../../server/src/base/outcome.ts';
import { startBrowser } from './browser.ts';
import { FAULTY_WORKSPACE } from './paths.ts';
import { type ServerOptions, startWorkbenchServer, type WorkbenchServer } from './workbench-server.ts';

export interface RunningEditor {
  readonly browser: Browser;
  readonly server: WorkbenchServer;
  end(): Promise<void>;
}

export const describeInEditor = describeWith(inject('editor'));
export const describeInNewestEditor = describeWith(inject('editor'), inject('newestWorkbench'));
/** In VS Code as a web page alone. */
export const describeInPageAlone = describeWith(inject('editor'), inject('webWorkbench'));

/** Where something needed is not there these tests are skipped; under CI they fail with the sentence that says why. */
function describeWith(...needed: readonly { readonly ok: boolean }[]): ReturnType<typeof describe.skipIf> {
  return describe.skipIf(needed.some(({ ok }) => !ok) && process.env.CI === undefined);
}

export interface EditorOptions extends Omit<ServerOptions, 'vsix'> {
  /** True has it be the newest VS Code instead of the oldest. */
  readonly isNewest?: boolean;
}

export async function startEditor({ isNewest = false, ...options }: EditorOptions = {}): Promise<RunningEditor> {
  const editor = inject('editor');
  if (!editor.ok) throw new Error(editor.problem);
  const workbench = isNewest ? inject('newestWorkbench') : succeed(editor.value.workbench);
  if (!workbench.ok) throw new Error(workbench.problem);
  const server = await startWorkbenchServer(workbench.value, { ...options, vsix: editor.value.vsix });
  const browser = await startBrowser(editor.value.chromium);
  return {
    browser,
    server,
    async end() {
      await browser.close();
      await server.stop();
    },
  };
}

/** A folder of its own, for whoever asked to remove. */
export function copyOfWorkspace(): string {
  const folder = mkdtempSync(join(tmpdir(), 'dewright-workspace-'));
  cpSync(FAULTY_WORKSPACE, folder, { recursive: true });
  return folder;
}
