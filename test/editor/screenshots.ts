/** `npm run screenshots`: takes the README's pictures anew, from the real editor with a sample open. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { startBrowser } from './browser.ts';
import { type EditorUnderTest, prepareEditor } from './editor-under-test.ts';
import { PROJECT_ROOT } from './paths.ts';
import { openView } from './webview-page.ts';
import { goTo, hoverHere, openWorkbench, placeIn, problems, runCommand, showQuickFixes } from './workbench-page.ts';
import { startWorkbenchServer } from './workbench-server.ts';

const SAMPLES = join(PROJECT_ROOT, 'samples');
const PICTURES = join(SAMPLES, 'pictures');
const SITE_FILE = 'timber-kilns.dewsite.yaml';
const SOUND_POINT = 'K3-MT-101:';
const SOUND_REPORT = 'dew-point:';
const FAULTY_POINT = 'K2-MT-101:';
const FAULTY_REPORT = 'relative-humidity:';
const SIZE = { width: 1280, height: 960 };
/** Each under its name, in its theme. */
const CHART_THEMES = { 'chart-light': 'Default Light Modern', 'chart-dark': 'Default Dark Modern' };
const CHART_SIZE = { width: 1280, height: 770 };
/** The half of the window that the chart is in. */
const CHART_CLIP = { x: CHART_SIZE.width / 2, y: 0, width: CHART_SIZE.width / 2, height: CHART_SIZE.height };
/** What else a window has says nothing here. */
const ONLY_EDITORS = {
  'workbench.activityBar.location': 'hidden',
  'workbench.statusBar.visible': false,
  'workbench.layoutControl.enabled': false,
  'window.commandCenter': false,
  'breadcrumbs.enabled': false,
};
const CHART_PHASE = 'conditioning:';
const CHART_SPOT = { x: 430, y: 330 };
const CHART_COMMAND = 'Dewright: Show the Moist-Air Chart';
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
    const site = readFileSync(join(samples, SITE_FILE), 'utf8');
    await takePicturesOf(page, site);
    for (const [name, theme] of Object.entries(CHART_THEMES)) {
      setTheme(samples, theme);
      const page = await browser.newPage({ viewport: CHART_SIZE });
      await openWorkbench(page, server, samples, SITE_FILE);
      await takeChart(page, site, name);
      await page.close();
    }
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

  const place = placeIn(site, SOUND_REPORT, SOUND_POINT);
  await goTo(page, place);
  for (let line = 0; line < LINES_BELOW_MIDDLE; line++) await page.keyboard.press('Control+ArrowUp');
  const hover = await hoverHere(page);
  await hover.filter({ hasText: 'expanded, k = 2' }).waitFor();
  await enlarge(page, hover);
  await take('hover');

  await page.keyboard.press('Escape');
  await showQuickFixes(page, placeIn(site, FAULTY_REPORT, FAULTY_POINT));
  await take('quick-fixes');
}

function setTheme(folder: string, theme: string): void {
  mkdirSync(join(folder, '.vscode'), { recursive: true });
  writeFileSync(
    join(folder, '.vscode/settings.json'),
    JSON.stringify({ ...ONLY_EDITORS, 'workbench.colorTheme': theme }),
  );
}

async function takeChart(page: Page, site: string, name: string): Promise<void> {
  await runCommand(page, 'View: Close Primary Side Bar');
  await page.locator('.codelens-decoration').first().waitFor(); // the extension is at work
  await goTo(page, placeIn(site, CHART_PHASE));
  const view = await openView(page, CHART_COMMAND, 'svg.drawing .here');
  await page.mouse.move(0, CHART_SIZE.height / 2); // off the buttons, whose names would stay
  await view.locator('svg.drawing').hover({ position: CHART_SPOT });
  await view.locator('output', { hasText: 'wet-bulb' }).waitFor();
  await page.screenshot({ path: join(PICTURES, `${name}.png`), clip: CHART_CLIP, animations: 'disabled' });
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
