/** The site of the faulty workspace, open in a page. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import type { EditorOfTest } from './page-of-test.ts';
import { openWorkbench, type Place, placeIn } from './workbench-page.ts';

export const SITE_FILE = 'fennmoor.dewsite.yaml';

/** Opens the site and waits until the extension is at work. */
export async function openSite(page: Page, { server, folder }: EditorOfTest): Promise<void> {
  await openWorkbench(page, server, folder, SITE_FILE);
  await page.locator('.squiggly-error').first().waitFor({ state: 'attached' });
}

/** As it is on disk. */
export function siteText({ folder }: EditorOfTest): string {
  return readFileSync(join(folder, SITE_FILE), 'utf8');
}

/** Where the site on disk first says this. */
export function placeInSite(editor: EditorOfTest, words: string): Place {
  return placeIn(siteText(editor), words);
}
