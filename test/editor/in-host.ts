/** Runs a suite inside the extension host, where it has the editor's real API. */
import type { Browser } from 'playwright-core';
import type { WorkbenchServer } from './workbench-server.ts';

export interface InHostRun {
  readonly extensionFolder: string;
  /** A CommonJS file whose name ends in `.js` and that exports `run(): Promise<void>`. */
  readonly suite: string;
  readonly folder: string;
}

const TIMEOUT = 120_000;

/** What the suite wrote to the console, line by line, once it has ended. */
export async function runInHost(browser: Browser, server: WorkbenchServer, run: InHostRun): Promise<readonly string[]> {
  const page = await browser.newPage();
  const lines: string[] = [];
  // The two functions through which this workbench reports to whoever drives it.
  await page.exposeFunction('codeAutomationLog', (_level: string, texts: readonly unknown[]) => {
    lines.push(texts.join(' '));
  });
  const ended = new Promise<void>((resolve) => {
    void page.exposeFunction('codeAutomationExit', () => resolve());
  });
  const payload = [
    ['extensionDevelopmentPath', server.addressOf(run.extensionFolder)],
    ['extensionTestsPath', server.addressOf(run.suite)],
  ];
  await page.goto(server.pageOf(run.folder, { payload: JSON.stringify(payload) }));
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
