/** `npm run screenshots`: takes the README's pictures anew, from the real editor with a sample open. */
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { startBrowser } from './browser.ts';
import { type EditorUnderTest, prepareEditor } from './editor-under-test.ts';
import { PROJECT_ROOT } from './paths.ts';
import { takeViewPictures } from './view-pictures.ts';
import { goTo, hoverHere, openWorkbench, placeIn, runCommand, showProblems, showQuickFixes } from './workbench-page.ts';
import { startWorkbenchServer } from './workbench-server.ts';

const SAMPLES = join(PROJECT_ROOT, 'samples');
const PICTURES = join(SAMPLES, 'pictures');
const SITE_FILE = 'timber-kilns.dewsite.yaml';
const SOUND_POINT = 'K3-MT-101:';
const SOUND_REPORT = 'dew-point:';
const FAULTY_POINT = 'K2-MT-101:';
const FAULTY_REPORT = 'relative-humidity:';
const SIZE = { width: 1280, height: 960 };
/** The line that is hovered over is so far below the middle that there is room above for the whole hover. */
const LINES_BELOW_MIDDLE = 10;
/** px */
const ROOM_ABOVE = 190;

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
  for (const each of [SITE_FILE, 'kits']) cpSync(join(SAMPLES, each), join(samples, each), { recursive: true });
  const server = await startWorkbenchServer(workbench, { vsix });
  const browser = await startBrowser(chromium);
  try {
    const page = await browser.newPage({ viewport: SIZE });
    await openWorkbench(page, server, samples, SITE_FILE);
    await takePicturesOf(page, readFileSync(join(samples, SITE_FILE), 'utf8'));
    await page.close();
    cpSync(SAMPLES, samples, { recursive: true });
    await takeViewPictures(browser, server, samples, PICTURES);
  } finally {
    await browser.close();
    await server.stop();
  }
}

async function takePicturesOf(page: Page, site: string): Promise<void> {
  const take = (name: string) => page.screenshot({ path: join(PICTURES, `${name}.png`), animations: 'disabled' });
  await runCommand(page, 'View: Close Primary Side Bar');
  await (await showProblems(page)).locator('.marker-message').first().waitFor();

  const place = placeIn(site, SOUND_REPORT, SOUND_POINT);
  await goTo(page, place);
  for (let line = 0; line < LINES_BELOW_MIDDLE; line++) await page.keyboard.press('Control+ArrowUp');
  const hover = await hoverHere(page, { hasText: 'expanded, k = 2' });
  await enlarge(page, hover);
  await take('hover');

  await page.keyboard.press('Escape');
  await showQuickFixes(page, placeIn(site, FAULTY_REPORT, FAULTY_POINT));
  await take('quick-fixes');
}

/** Draws up the upper edge of a hover, which by itself shows only the beginning of a long text. */
async function enlarge(page: Page, hover: Locator): Promise<void> {
  const box = await hover.boundingBox();
  if (box === null) throw new Error('the hover is gone');
  const middle = box.x + box.width / 2;
  await page.mouse.move(middle, box.y + box.height / 2);
  await page.mouse.move(middle, box.y, { steps: 5 });
  await page.mouse.down();
  await page.mouse.move(middle, box.y - ROOM_ABOVE, { steps: 10 });
  await page.mouse.up();
}
