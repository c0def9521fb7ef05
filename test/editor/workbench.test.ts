import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import psychrolib from 'psychrolib';
import { expect } from 'vitest';
import { openSite, placeInSite, siteText } from './faulty-site.ts';
import { setForFolder } from './folder-settings.ts';
import { VISITS } from './in-host/visits.ts';
import { itInEditor } from './page-of-test.ts';
import { describeInEditor } from './running-editor.ts';
import { viewIn } from './webview-page.ts';
import { goTo, hoverAt, problems, repeatUntil, runCommand, save, takeQuickFix } from './workbench-page.ts';

const it = itInEditor();

describeInEditor('in the workbench', () => {
  it('the Problems panel shows severity, message, source, rule name and place, and links to the page of the rule', async ({
    page,
    editor,
  }) => {
    await openSite(page, editor);
    await expect
      .poll(() => problems(page))
      .toContainEqual({
        severity: 'Error',
        message: expect.stringMatching(/^The relative humidity needs the air temperature/),
        source: 'dewright',
        code: 'air-temperature-missing',
        place: '[Ln 24, Col 7]',
      });
    const link = page.locator('.markers-panel a', { hasText: 'air-temperature-missing' });
    await repeatUntil(
      (within) => link.click(within),
      page.locator('.tab.active', { hasText: 'air-temperature-missing.md' }),
    );
    await showsPageOfRule(page, 'air-temperature-missing');
  });

  it('a rule chosen by the command is explained', async ({ page, editor }) => {
    await openSite(page, editor);
    await runCommand(page, 'Dewright: Explain This Rule');
    await page.locator('.quick-input-list .monaco-list-row', { hasText: 'air-temperature-missing' }).click();
    await showsPageOfRule(page, 'air-temperature-missing');
  });

  it('a hover shows the dew point of a space as psychrolib has it', async ({ page, editor }) => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    const highest = psychrolib.GetTDewPointFromRelHum(78, 0.88); // the wettest corner of the site file
    await openSite(page, editor);
    await hoverAt(page, placeInSite(editor, 'kiln-2:'), { hasText: `Highest dew point: ${highest.toFixed(1)} °C` });
  });

  it('a hover on a plan of checks draws the errors that the visits found', async ({ page, editor }) => {
    for (const [path, text] of Object.entries(VISITS)) writeFileSync(join(editor.folder, path), text);
    await openSite(page, editor);
    const picture = page.locator('img[src^="data:image/svg+xml"]');
    /** Asked for anew each time: the editor takes a hover away when it likes. */
    const widths = async () => {
      const hover = await hoverAt(page, placeInSite(editor, 'checks:'), { has: picture });
      return hover.locator(picture).first().evaluate(widthsOf, undefined, { timeout: 5_000 });
    };
    await expect.poll(widths).toEqual({ drawn: 320, isShownWide: true });
  });

  it('the pointer on a number beside a value shows how it came about', async ({ page, editor }) => {
    await openSite(page, editor);
    const hint = page.locator('.view-line span[class*="dyn-rule"]', { hasText: /dew\spoint.*74\.9\s°C/ }).first();
    const shown = page.locator('.monaco-hover', {
      hasText: 'Saturation pressure over water',
      hasNotText: 'Give one of humidity', // as the hover of the key beside it says
    });
    await repeatUntil(async (within) => {
      await page.mouse.move(0, 0); // a pointer that stays where it is asks for nothing
      await hint.hover(within);
    }, shown.first());
  });

  it('a quick fix by keyboard ends on disk', async ({ page, editor }) => {
    await openSite(page, editor);
    await takeQuickFix(page, placeInSite(editor, 'relative-humidity:'), 'Report dew point instead');
    await save(page);
    await expect.poll(() => siteText(editor)).toMatch(/reports:\n +dew-point: .*\n +supply:/);
  });

  it('with the setting for it, saving makes every safe fix', async ({ page, editor }) => {
    setForFolder(editor.folder, { 'editor.codeActionsOnSave': { 'source.fixAll.dewright': 'explicit' } });
    await openSite(page, editor);
    await goTo(page, placeInSite(editor, 'Fennmoor Timber'));
    await page.keyboard.type('At ');
    await save(page);
    await expect.poll(() => siteText(editor)).toContain('{ tolerance: 3 %RH, air-temperature: air-temperature-probe }');
    expect(siteText(editor)).toContain('title: At Fennmoor Timber');
  });
});

/** As a rendered document. */
async function showsPageOfRule(page: Page, rule: string): Promise<void> {
  await page.locator('.tab.active', { hasText: `${rule}.md` }).waitFor();
  await viewIn(page).locator('h1', { hasText: rule }).waitFor();
}

/** The page has it; the types of Node do not know it. */
interface Picture {
  readonly naturalWidth: number;
  readonly width: number;
  decode(): Promise<void>;
}

async function widthsOf(picture: Picture): Promise<{ readonly drawn: number; readonly isShownWide: boolean }> {
  await picture.decode();
  return { drawn: picture.naturalWidth, isShownWide: picture.width >= 300 };
}
