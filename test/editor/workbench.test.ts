import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import psychrolib from 'psychrolib';
import { expect, it } from 'vitest';
import { VISITS } from './in-host/visits.ts';
import { withPageForEachTest } from './page-of-test.ts';
import { describeInEditor, type RunningEditor } from './running-editor.ts';
import {
  goTo,
  hoverAt,
  openWorkbench,
  type Place,
  placeIn,
  problems,
  repeatUntilVisible,
  runCommand,
  save,
  takeQuickFix,
} from './workbench-page.ts';

const SITE_FILE = 'fennmoor.dewsite.yaml';

describeInEditor('in the workbench', () => {
  let editor: RunningEditor;
  let page: Page;

  withPageForEachTest((running, opened) => {
    editor = running;
    page = opened;
  });

  it('the Problems panel shows severity, message, source, rule name and place', async () => {
    await openSite();
    await expect
      .poll(() => problems(page), { timeout: 20_000 })
      .toContainEqual({
        severity: 'Error',
        message: expect.stringMatching(/^The relative humidity needs the air temperature/),
        source: 'dewright',
        code: 'air-temperature-missing',
        place: '[Ln 24, Col 7]',
      });
  });

  it('the link of a finding opens the page of its rule, rendered', async () => {
    await openSite();
    await problems(page);
    await page.locator('.markers-panel a', { hasText: 'air-temperature-missing' }).click();
    await pageOfRule(page, 'air-temperature-missing');
  });

  it('a rule chosen by the command is explained', async () => {
    await openSite();
    await runCommand(page, 'Dewright: Explain This Rule');
    await page.locator('.quick-input-list .monaco-list-row', { hasText: 'air-temperature-missing' }).click();
    await pageOfRule(page, 'air-temperature-missing');
  });

  it('a hover shows the dew point of a space as psychrolib has it', async () => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    const highest = psychrolib.GetTDewPointFromRelHum(78, 0.88); // the wettest corner of the site file
    await openSite();
    const hover = await hoverAt(page, placeOf('kiln-2:'));
    await hover.filter({ hasText: `Highest dew point: ${highest.toFixed(1)} °C` }).waitFor();
  });

  it('a hover on a plan of checks draws the errors that the visits found', async () => {
    for (const [path, text] of Object.entries(VISITS)) writeFileSync(join(editor.folder, path), text);
    await openSite();
    /** Asked for anew each time: the editor takes a hover away when it likes. */
    const widths = async () => {
      const hover = await hoverAt(page, placeOf('checks:'));
      const picture = hover.locator('img[src^="data:image/svg+xml"]').first();
      return picture.evaluate(
        (image) => ({ drawn: Reflect.get(image, 'naturalWidth'), isShownWide: Reflect.get(image, 'width') >= 300 }),
        undefined,
        { timeout: 5_000 },
      );
    };
    await expect.poll(widths, { timeout: 40_000 }).toEqual({ drawn: 320, isShownWide: true });
  });

  it('the pointer on a number beside a value shows how it came about', async () => {
    await openSite();
    const hint = page.locator('.view-line span[class*="dyn-rule"]', { hasText: /dew\spoint.*74\.9\s°C/ }).first();
    const shown = page.locator('.monaco-hover', {
      hasText: 'Saturation pressure over water',
      hasNotText: 'Give one of humidity', // as the hover of the key beside it says
    });
    await repeatUntilVisible(async () => {
      await page.mouse.move(0, 0); // a pointer that stays where it is asks for nothing
      await hint.hover();
    }, shown);
  });

  it('a quick fix by keyboard ends on disk', async () => {
    await openSite();
    await takeQuickFix(page, placeOf('relative-humidity:'), 'Report dew point instead');
    await save(page);
    await expect.poll(siteOnDisk).toMatch(/reports:\n +dew-point: .*\n +supply:/);
  });

  it('with the setting for it, saving makes every safe fix', async () => {
    const settings = { 'editor.codeActionsOnSave': { 'source.fixAll.dewright': 'explicit' } };
    mkdirSync(join(editor.folder, '.vscode'));
    writeFileSync(join(editor.folder, '.vscode/settings.json'), JSON.stringify(settings));
    await openSite();
    await goTo(page, placeOf('Fennmoor Timber'));
    await page.keyboard.type('At ');
    await save(page);
    await expect.poll(siteOnDisk).toContain('{ tolerance: 3 %RH, air-temperature: air-temperature-probe }');
    expect(siteOnDisk()).toContain('title: At Fennmoor Timber');
  });

  /** Opens the site and waits until the extension is at work. */
  async function openSite(): Promise<void> {
    await openWorkbench(page, editor.server, editor.folder, SITE_FILE);
    await page.locator('.squiggly-error').first().waitFor({ state: 'attached' });
  }

  function siteOnDisk(): string {
    return readFileSync(join(editor.folder, SITE_FILE), 'utf8');
  }

  function placeOf(words: string): Place {
    return placeIn(siteOnDisk(), words);
  }
});

/** Waits until a rule's page is shown as a rendered document. */
async function pageOfRule(page: Page, rule: string): Promise<void> {
  await page.locator('.tab.active', { hasText: `${rule}.md` }).waitFor();
  await expect
    .poll(
      async () =>
        Promise.all(
          page.frames().map((frame) =>
            frame
              .locator('h1')
              .allTextContents()
              .catch(() => []),
          ),
        ),
      {
        timeout: 20_000,
      },
    )
    .toContainEqual([expect.stringContaining(rule)]);
}
