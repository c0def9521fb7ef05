/** What axe-core finds in a pack that hinders people, as a browser shows it: on screen in light and dark, and printed. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findChromium, startBrowser } from '../editor/browser.ts';
import { SAMPLE_PACKS } from './packs.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const CHROMIUM = findChromium();
const MEDIA = [
  { media: 'screen', colorScheme: 'light' },
  { media: 'screen', colorScheme: 'dark' },
  { media: 'print', colorScheme: 'dark' },
] as const;

describe.skipIf(!CHROMIUM.ok)('a pack in a browser', () => {
  let browser: Browser | undefined;

  beforeAll(async () => {
    if (CHROMIUM.ok) browser = await startBrowser(CHROMIUM.value);
  });
  afterAll(async () => browser?.close());

  it.each(MEDIA)('hinders nobody on $media in $colorScheme', async (media) => {
    const pack = SAMPLE_PACKS.find(({ name }) => name === 'timber-kilns.dewsite.yaml');
    const page = await browser?.newPage();
    if (page === undefined || pack === undefined) throw new Error('no browser or no pack');
    await page.emulateMedia(media);
    await page.setContent(pack.html);
    await page.evaluate(AXE);
    const found: readonly { readonly id: string; readonly nodes: readonly string[] }[] = await page.evaluate(
      `axe.run(document, { resultTypes: ['violations'] }).then(({ violations }) =>
        violations.map(({ id, nodes }) => ({ id, nodes: nodes.slice(0, 5).map(({ html, failureSummary }) => html.slice(0, 200) + failureSummary) })))`,
    );
    expect(found).toEqual([]);
    const overflow = await page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth');
    expect(overflow).toBe(0);
    await page.close();
  });
});
