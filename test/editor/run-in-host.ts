/** Runs a suite inside the extension host, where it has the editor's real API. */
import { join } from 'node:path';
import { build } from 'esbuild';
import type { Browser } from 'playwright-core';
import { CACHE_FOLDER, PROJECT_ROOT } from './paths.ts';
import type { WorkbenchServer } from './workbench-server.ts';

const TIMEOUT = 240_000;

/** Lies below the folder of the extension: the editor then runs it in the host that runs the extension. */
export async function bundledSuite(): Promise<string> {
  const outfile = join(CACHE_FOLDER, 'in-host-suite.js');
  await build({
    entryPoints: [join(PROJECT_ROOT, 'test/editor/in-host/suite.ts')],
    outfile,
    bundle: true,
    platform: 'browser',
    format: 'cjs',
    external: ['vscode'],
  });
  return outfile;
}

/** The page of a workbench that runs a suite. */
export function pageWithSuite(server: WorkbenchServer, suite: string, folder: string): string {
  const payload = [
    ['extensionDevelopmentPath', server.addressOf(PROJECT_ROOT)],
    ['extensionTestsPath', server.addressOf(suite)],
  ];
  return server.pageOf(folder, { payload: JSON.stringify(payload) });
}

/** What the suite wrote to the console, line by line, once it has ended. */
export async function runInHost(browser: Browser, address: string): Promise<readonly string[]> {
  const page = await browser.newPage();
  const lines: string[] = [];
  // The two functions through which this workbench reports to whoever drives it.
  await page.exposeFunction('codeAutomationLog', (_level: string, texts: readonly unknown[]) => {
    lines.push(texts.join(' '));
  });
  const ended = new Promise<void>((resolve) => {
    void page.exposeFunction('codeAutomationExit', () => resolve());
  });
  await page.goto(address, { timeout: TIMEOUT });
  await withinTime(ended, () => `The suite did not end. It wrote:\n${lines.join('\n')}`);
  await page.close();
  return lines;
}

async function withinTime(work: Promise<void>, complaint: () => string): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_resolve, reject) => {
    timer = setTimeout(() => reject(new Error(complaint())), TIMEOUT);
  });
  await Promise.race([work, late]).finally(() => clearTimeout(timer));
}
