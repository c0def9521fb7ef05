/** `npm run screenshots`: takes the README's pictures anew, from the real editor with a sample open. */
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { startBrowser } from './browser.ts';
import { type EditorUnderTest, prepareEditor } from './editor-under-test.ts';
import { PROJECT_ROOT } from './paths.ts';
import { hoverAt, openWorkbench, placeIn, problems, runCommand, showQuickFixes } from './workbench-page.ts';
import { startWorkbenchServer } from './workbench-server.ts';

const SAMPLES = join(PROJECT_ROOT, 'samples');
const PICTURES = join(SAMPLES, 'pictures');
const SITE_FILE = 'timber-kilns.dewsite.yaml';
const FAULTY_POINT = 'K2-MT-101:';
const FAULTY_REPORT = 'relative-humidity:';
const SIZE = { width: 1280, height: 800 };

const folder = mkdtempSync(join(tmpdir(), 'dewright-pictures-'));
const editor = prepareEditor(folder, console.log);
if (editor.ok) await takePictures(editor.value);
else {
  console.error(editor.problem);
  process.exitCode = 1;
}
rmSync(folder, { recursive: true });

async function takePictures({ workbench, chromium, vsix }: EditorUnderTest): Promise<void> {
  const samples = join(folder, 'samples');
  cpSync(SAMPLES, samples, { recursive: true });
  const server = await startWorkbenchServer(workbench, { vsix });
  const browser = await startBrowser(chromium);
  try {
    const page = await browser.newPage({ viewport: SIZE });
    await openWorkbench(page, server, samples, SITE_FILE);
    await takePicturesOf(page, readFileSync(join(samples, SITE_FILE), 'utf8'));
  } finally {
    await browser.close();
    await server.stop();
  }
}

async function takePicturesOf(page: Page, site: string): Promise<void> {
  const take = (name: string) => page.screenshot({ path: join(PICTURES, `${name}.png`), animations: 'disabled' });
  await runCommand(page, 'View: Close Primary Side Bar');
  await problems(page);
  await page.locator('.markers-panel .marker-message').first().waitFor();

  const hover = await hoverAt(page, placeIn(site, FAULTY_POINT));
  await hover.filter({ hasText: 'Highest dew point' }).waitFor();
  await take('hover');

  await page.keyboard.press('Escape');
  await showQuickFixes(page, placeIn(site, FAULTY_REPORT, FAULTY_POINT));
  await take('quick-fixes');
}
