import type { Locator, Page } from 'playwright-core';
import psychrolib from 'psychrolib';
import { expect } from 'vitest';
import { openSite, placeInSite } from './faulty-site.ts';
import { type EditorOfTest, itInEditor } from './page-of-test.ts';
import { describeInEditor } from './running-editor.ts';
import { openView, type View } from './webview-page.ts';
import { cursorAt, goTo, repeatUntil, runCommand } from './workbench-page.ts';

const COMMAND = 'Dewright: Show the Moist-Air Chart';
const CHART = 'svg.drawing';

const it = itInEditor();
const itInWebWorker = itInEditor({ inBrowser: true });

describeInEditor('the moist-air chart beside its file', () => {
  it('shows the envelope, what its sensors see, and the air at the pointer, as psychrolib has them', async ({
    page,
    editor,
  }) => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    // The wettest corner, 78 °C and 88 %RH, seen by sensors that are 8 K warmer. Enhancement factors part the two by 0.1 %RH.
    const atSensor = (88 * psychrolib.GetSatVapPres(78)) / psychrolib.GetSatVapPres(86);
    const view = await openChart(page, editor);
    await view.locator('text', { hasText: 'air: 55 … 78 °C, 35 … 88 %RH' }).waitFor();
    const sensors = await view.locator('text', { hasText: 'K2-MT-101, K2-MT-102: sensor at' }).textContent();
    expect(Number(/sensor at ([\d.]+) %RH/.exec(sensors ?? '')?.[1])).toBeCloseTo(atSensor, 0);

    await pointAt(page, view);
    const reading = (await view.locator('output').textContent()) ?? '';
    const numberOf = (name: string) => Number(new RegExp(`${name} (-?[\\d.]+)`).exec(reading)?.[1]);
    const dewPoint = psychrolib.GetTDewPointFromRelHum(
      numberOf('air temperature'),
      numberOf('relative humidity') / 100,
    );
    // Each number read is rounded to 0.1: half of that in temperature and humidity moves a dew point by up to 0.4 K here.
    expect(Math.abs(numberOf('dew point') - dewPoint)).toBeLessThan(0.4);
  });

  it('a click on an area goes to its line', async ({ page, editor }) => {
    const view = await openChart(page, editor);
    const area = view.locator('[role=link] .area');
    await repeatUntil(
      async (within) => {
        const { width, height } = (await area.boundingBox(within)) ?? { width: 0, height: 0 };
        const inside = { x: 0.75 * width, y: 0.65 * height }; // the area bends: its middle is not in it
        await area.click({ position: inside, ...within }); // the size is another where the chart is drawn anew
      },
      cursorAt(page, placeInSite(editor, 'air:')),
    );
  });

  it('is copied as a drawing that stands by itself, and reads the air at a spot that the arrow keys move', async ({
    page,
    editor,
  }) => {
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    const view = await openChart(page, editor);
    await repeatUntil(
      (within) => view.locator('button[data-action=copy]').click(within),
      page.locator('.statusbar-item', { hasText: 'The picture is in the clipboard.' }),
    );
    const svg = await page.evaluate('navigator.clipboard.readText()');
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg".*<style>.*<\/svg>$/s);
    expect(svg).not.toMatch(/file:\/\/|vscode-remote|data-\w+=|tabindex=/);

    const reading = view.locator('output', { hasText: /air temperature .* mixing ratio/ });
    await repeatUntil((within) => view.locator(CHART).press('ArrowRight', within), reading);
    await view.locator('.spot').waitFor();
  });

  it('follows the file, is closed without a word, and opened again', async ({ page, editor }) => {
    const view = await openChart(page, editor);
    await goTo(page, placeInSite(editor, '55 .. 78'));
    await page.keyboard.type('1');
    await page.keyboard.press('Delete');
    await view.locator('text', { hasText: 'air: 15 … 78 °C, 35 … 88 %RH' }).waitFor();

    await tab(page).click({ button: 'middle' });
    await tab(page).waitFor({ state: 'detached' });
    await view.locator(CHART).waitFor({ state: 'hidden' });
    await openView(page, COMMAND, CHART);
  });

  it('keeps the axis that was chosen while another tab hides it', async ({ page, editor }) => {
    const view = await openChart(page, editor);
    const axis = view.locator('text', { hasText: /^dew point$/ });
    await view.locator('select[name=humidity-axis]').selectOption('dew-point');
    await axis.waitFor();
    await tab(page).click(); // another tab then opens beside it
    await runCommand(page, 'File: New Untitled Text File');
    await axis.waitFor({ state: 'hidden' });
    await tab(page).click();
    await axis.waitFor();
  });

  it('zooms by wheel and by button, and moves by drag', async ({ page, editor }) => {
    const view = await openChart(page, editor);
    const seen = () => view.locator(CHART).getAttribute('viewBox');
    const whole = await seen();
    await pointAt(page, view);
    await page.mouse.wheel(0, -100);
    await expect.poll(seen).not.toBe(whole);
    const enlarged = await seen();
    await page.mouse.down(); // over an area, which a click would lead from
    await page.mouse.move(900, 400, { steps: 5 });
    await page.mouse.up();
    await expect.poll(seen).not.toBe(enlarged);
    const moved = await seen();
    await page.keyboard.press('+'); // the drawing has kept the focus
    await expect.poll(seen).not.toBe(moved);
    await view.locator('button[data-action=zoom-reset]').click();
    await expect.poll(seen).toBe(whole);
    await runCommand(page, 'View: Focus First Editor Group');
    await cursorAt(page, { line: 1, column: 1 }).waitFor();
  });
});

describeInEditor('in a web worker', () => {
  itInWebWorker('the chart is shown all the same', async ({ page, editor }) => {
    await openSite(page, editor);
    await openView(page, COMMAND, CHART);
  });
});

/** Where an area is, until what the air is there is read. */
async function pointAt(page: Page, view: View): Promise<void> {
  await repeatUntil(
    async (within) => {
      await page.mouse.move(0, 0); // a pointer that stays where it is asks for nothing
      await view.locator(CHART).hover({ position: { x: 300, y: 260 }, ...within });
    },
    view.locator('output', { hasText: 'specific enthalpy' }),
  );
}

async function openChart(page: Page, editor: EditorOfTest): Promise<View> {
  await openSite(page, editor);
  return openView(page, COMMAND, CHART);
}

function tab(page: Page): Locator {
  return page.locator('.tab', { hasText: 'Chart: kiln-2' });
}
