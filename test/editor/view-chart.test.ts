import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Frame, Page } from 'playwright-core';
import psychrolib from 'psychrolib';
import { expect, it, vi } from 'vitest';
import { withPageForEachTest } from './page-of-test.ts';
import { describeInEditor, type RunningEditor, startEditor } from './running-editor.ts';
import { accessibilityFaults, openView, viewWith } from './webview-page.ts';
import { goTo, openWorkbench, type Place, placeIn, runCommand } from './workbench-page.ts';

const SITE_FILE = 'fennmoor.dewsite.yaml';
const COMMAND = 'Dewright: Show the Moist-Air Chart';
const CHART = 'svg.drawing';

describeInEditor('the moist-air chart beside its file', () => {
  let editor: RunningEditor;
  let page: Page;

  withPageForEachTest((running, opened) => {
    editor = running;
    page = opened;
  });

  it('shows the envelope of the space, and what its sensors see, as psychrolib has it', async () => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    // The wettest corner, 78 °C and 88 %RH, seen by sensors that are 8 K warmer. Enhancement factors part the two by 0.1 %RH.
    const atSensor = (88 * psychrolib.GetSatVapPres(78)) / psychrolib.GetSatVapPres(86);
    const view = await openChart();
    await view.locator('text', { hasText: 'air: 55 … 78 °C, 35 … 88 %RH' }).waitFor();
    const sensors = await view.locator('text', { hasText: 'K2-MT-101, K2-MT-102: sensor at' }).textContent();
    expect(Number(/sensor at ([\d.]+) %RH/.exec(sensors ?? '')?.[1])).toBeCloseTo(atSensor, 0);
  });

  it('a click on an area goes to its line, and so does Enter', async () => {
    const view = await openChart();
    const area = view.locator('[role=link] .area');
    await vi.waitFor(
      async () => {
        const { width, height } = (await area.boundingBox()) ?? { width: 0, height: 0 };
        const inside = { x: 0.75 * width, y: 0.65 * height }; // the area bends: its middle is not in it
        await area.click({ position: inside, timeout: 1000 }); // the size is another where the chart is drawn anew
      },
      { timeout: 20_000 },
    );
    await cursorIsAt(placeIn(site(), 'air:'));
    await goTo(page, placeIn(site(), 'fennmoor'));
    await view.locator('[role=link]:has(.shift)').first().focus();
    await page.keyboard.press('Enter');
    await cursorIsAt(placeIn(site(), '8 K'));
  });

  it('reads the air at the pointer as psychrolib has it', async () => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    const view = await openChart();
    await view.locator(CHART).hover({ position: { x: 300, y: 260 } });
    const reading = view.locator('output');
    await expect.poll(() => reading.textContent()).toMatch(/specific enthalpy/);
    const numberOf = async (name: string) =>
      Number(new RegExp(`${name} (-?[\\d.]+)`).exec((await reading.textContent()) ?? '')?.[1]);
    const [celsius, percent] = [await numberOf('air temperature'), await numberOf('relative humidity')];
    // Each number read is rounded to 0.1: half of that in temperature and humidity moves a dew point by up to 0.4 K here.
    const dewPoint = psychrolib.GetTDewPointFromRelHum(celsius, percent / 100);
    expect(Math.abs((await numberOf('dew point')) - dewPoint)).toBeLessThan(0.4);
  });

  it('reads the air at a spot that the arrow keys move', async () => {
    const view = await openChart();
    await view.locator(CHART).focus();
    await page.keyboard.press('ArrowRight');
    await view.locator('output', { hasText: /air temperature .* mixing ratio/ }).waitFor();
    await view.locator('.spot').waitFor();
  });

  it('follows the file: a changed envelope is drawn anew', async () => {
    const view = await openChart();
    await goTo(page, placeIn(site(), '55 .. 78'));
    await page.keyboard.type('1');
    await page.keyboard.press('Delete');
    await view.locator('text', { hasText: 'air: 15 … 78 °C, 35 … 88 %RH' }).waitFor();
  });

  it('keeps the axis that was chosen while another tab hides it', async () => {
    const view = await openChart();
    await view.locator('select[name=humidity-axis]').selectOption('dew-point');
    await view.locator('text', { hasText: /^dew point$/ }).waitFor();
    await runCommand(page, 'File: New Untitled Text File'); // beside: where the focus is
    await page.locator('.tab', { hasText: 'Chart: kiln-2' }).click();
    await (await viewWith(page, CHART)).locator('text', { hasText: /^dew point$/ }).waitFor();
  });

  it('is closed without a word, and opened again', async () => {
    await openChart();
    await page.locator('.tab', { hasText: 'Chart: kiln-2' }).click({ button: 'middle' });
    await page.locator('.tab', { hasText: 'Chart: kiln-2' }).waitFor({ state: 'detached' });
    await openView(page, COMMAND, CHART);
  });

  it('zooms by wheel and by button, and moves by drag', async () => {
    const view = await openChart();
    const seen = () => view.locator(CHART).getAttribute('viewBox');
    const whole = await seen();
    await view.locator(CHART).hover({ position: { x: 300, y: 260 } });
    await page.mouse.wheel(0, -100);
    await expect.poll(seen).not.toBe(whole);
    const enlarged = await seen();
    await page.mouse.down(); // over an area, which a click would lead from
    await page.mouse.move(900, 400, { steps: 5 });
    await page.mouse.up();
    expect(await seen()).not.toBe(enlarged);
    await view.locator('button[data-action=zoom-reset]').click();
    await expect.poll(seen).toBe(whole);
    await runCommand(page, 'View: Focus First Editor Group');
    await cursorIsAt({ line: 1, column: 1 });
  });

  it('is copied as a drawing that stands by itself and names no file', async () => {
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    const view = await openChart();
    await view.locator('button[data-action=copy]').click();
    await page.locator('.statusbar-item', { hasText: 'The picture is in the clipboard.' }).waitFor();
    const svg = await page.evaluate('navigator.clipboard.readText()');
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg".*<style>.*<\/svg>$/s);
    expect(svg).not.toMatch(/file:\/\/|vscode-remote|data-\w+=|tabindex=/);
  });

  it.each(['Default Light Modern', 'Default Dark Modern', 'Default High Contrast', 'Default High Contrast Light'])(
    '%s: nothing hinders people from using it',
    async (theme) => {
      mkdirSync(join(editor.folder, '.vscode'));
      writeFileSync(join(editor.folder, '.vscode/settings.json'), JSON.stringify({ 'workbench.colorTheme': theme }));
      expect(await accessibilityFaults(await openChart())).toEqual([]);
    },
  );

  async function openChart(): Promise<Frame> {
    await openWorkbench(page, editor.server, editor.folder, SITE_FILE);
    await page.locator('.squiggly-error').first().waitFor({ state: 'attached' });
    return openView(page, COMMAND, CHART);
  }

  function cursorIsAt({ line, column }: Place): Promise<void> {
    return page
      .locator('.statusbar-item', { hasText: `Ln ${line}, Col ${column}` })
      .first()
      .waitFor();
  }

  function site(): string {
    return readFileSync(join(editor.folder, SITE_FILE), 'utf8');
  }
});

describeInEditor('where less is allowed', () => {
  it.each([
    ['in a folder that the user does not trust', { restricted: true }],
    ['in a web worker', { inBrowser: true }],
  ])('%s the chart is shown all the same', async (_where, options) => {
    const editor = await startEditor(options);
    try {
      const page = await editor.browser.newPage();
      await openWorkbench(page, editor.server, editor.folder, SITE_FILE);
      await page.locator('.squiggly-error').first().waitFor({ state: 'attached' });
      await openView(page, COMMAND, CHART);
    } finally {
      await editor.end();
    }
  });
});
