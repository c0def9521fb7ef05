/** Takes the README's pictures of the views, each in the light and the dark theme, with a sample open beside it. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { commitFolder } from './committed-folder.ts';
import { setForFolder } from './folder-settings.ts';
import { openView, type View } from './webview-page.ts';
import { goTo, openWorkbench, placeIn, runCommand } from './workbench-page.ts';
import type { WorkbenchServer } from './workbench-server.ts';

const SITE_FILE = 'timber-kilns.dewsite.yaml';
const THEMES = { light: 'Default Light Modern', dark: 'Default Dark Modern' };
/** px, below the picture: where the cursor is stands there. */
const STATUS_BAR = 22;
/** What else a window has says nothing here. */
const ONLY_EDITORS = {
  'workbench.activityBar.location': 'hidden',
  'workbench.layoutControl.enabled': false,
  'window.commandCenter': false,
  'breadcrumbs.enabled': false,
  'git.enabled': true, // the other tests do without
};

interface ViewPicture {
  readonly name: string;
  readonly command: string;
  /** Where the cursor is. */
  readonly at: string;
  readonly expected: string;
  /** px, of the half of the window that the view is in. */
  readonly size: { readonly width: number; readonly height: number };
  readonly prepare?: (view: View) => Promise<void>;
  /** What the file says in the picture, where that is not what is committed. */
  readonly edit?: (site: string) => string;
}

const PICTURES: readonly ViewPicture[] = [
  {
    name: 'chart',
    command: 'Dewright: Show the Moist-Air Chart',
    at: 'conditioning:',
    expected: 'svg.drawing .here',
    size: { width: 640, height: 770 },
    async prepare(view) {
      await view.locator('svg.drawing').hover({ position: { x: 430, y: 330 } });
      await view.locator('output', { hasText: 'wet-bulb' }).waitFor();
    },
  },
  {
    name: 'point',
    command: 'Dewright: Show the Point',
    at: 'K1-MT-101:',
    expected: 'svg',
    size: { width: 800, height: 1060 },
  },
  {
    name: 'what-if',
    command: 'Dewright: Try Other Values',
    at: 'K3-MT-101:',
    expected: 'fieldset',
    size: { width: 800, height: 1180 },
    async prepare(view) {
      await view.locator('select[name$="mounting/position"]').selectOption('below');
      await view.locator('input[name$="supply/voltage"]').fill('24');
      await view.locator('.problem').waitFor();
    },
  },
  {
    name: 'overview',
    command: 'Dewright: Show the Overview of All Points',
    at: 'K1-MT-101:',
    expected: 'td:has-text("TS-MT-701")', // of the site that is read last
    size: { width: 960, height: 620 },
    async prepare(view) {
      await view.locator('th button', { hasText: 'Findings' }).click();
      await view.locator('th button', { hasText: 'Findings' }).click();
    },
  },
  {
    name: 'changes',
    command: 'Dewright: Show What Has Changed in Meaning',
    at: 'K3-MT-101:',
    expected: 'h3',
    size: { width: 800, height: 760 },
    edit: (site) => {
      const point = site.indexOf('K3-MT-101:');
      const changed = site
        .slice(point)
        .replace('rise: 6 K', 'rise: 4 K')
        .replace('insertion: 180 mm', 'insertion: 150 mm')
        .replace('position: above', 'position: below');
      return site.slice(0, point) + changed;
    },
  },
];

/** @param samples a copy of the samples, which may be changed @param pictures where the pictures go */
export async function takeViewPictures(
  browser: Browser,
  server: WorkbenchServer,
  samples: string,
  pictures: string,
): Promise<void> {
  commitFolder(samples);
  const committed = readFileSync(join(samples, SITE_FILE), 'utf8');
  for (const [theme, title] of Object.entries(THEMES)) {
    setForFolder(samples, { ...ONLY_EDITORS, 'workbench.colorTheme': title });
    for (const picture of PICTURES) {
      const { name, size, edit } = picture;
      const site = edit?.(committed) ?? committed;
      writeFileSync(join(samples, SITE_FILE), site);
      const viewport = { width: 2 * size.width, height: size.height + STATUS_BAR };
      const page = await browser.newPage({ viewport });
      await openWorkbench(page, server, samples, SITE_FILE);
      await takeView(page, site, picture);
      const clip = { ...size, x: size.width, y: 0 };
      await page.screenshot({ path: join(pictures, `${name}-${theme}.png`), clip, animations: 'disabled' });
      await page.close();
    }
  }
}

async function takeView(page: Page, site: string, { command, at, expected, prepare }: ViewPicture): Promise<void> {
  await runCommand(page, 'View: Close Primary Side Bar');
  await goTo(page, placeIn(site, at));
  await page.locator('.codelens-decoration').first().waitFor({ state: 'attached' });
  const view = await openView(page, command, expected);
  await page.mouse.move(0, 300); // off the buttons, whose names would stay
  await prepare?.(view);
}
