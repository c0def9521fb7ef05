import { expect } from 'vitest';
import { openSite, placeInSite, siteText } from './faulty-site.ts';
import { itInEditor } from './page-of-test.ts';
import { describeInEditor } from './running-editor.ts';
import { openView, viewIn } from './webview-page.ts';
import { cursorAt, goTo, repeatUntil, runCommand, save } from './workbench-page.ts';

const RISE = 'input[name="points/K2-MT-101/humidity-probe/heater/rise"]';

const it = itInEditor();

describeInEditor('the views of points', () => {
  it('the point of the cursor is shown: what is found, which leads to its place, and what to expect', async ({
    page,
    editor,
  }) => {
    await openSite(page, editor);
    await goTo(page, placeInSite(editor, 'K2-MT-101:'));
    const view = await openView(page, 'Dewright: Show the Point', 'table');
    await view.locator('h1', { hasText: 'K2-MT-101' }).waitFor();
    await view.locator('li', { hasText: '(air-temperature-missing)' }).waitFor();
    const rows = await view.locator('table tr').allInnerTexts();
    expect(rows).toContainEqual(
      expect.stringMatching(/^Highest humidity at the sensor\s+6\d(\.\d)? %RH\s+78 °C and 88 %RH/),
    );
    const finding = view.locator('li [data-file]', { hasText: 'The relative humidity needs the air temperature' });
    await finding.click();
    await cursorAt(page, { line: 24 }).waitFor();
    await goTo(page, placeInSite(editor, 'K2-MT-102:'));
    await view.locator('h1', { hasText: 'K2-MT-102' }).waitFor();
  });

  it('the lens above a point opens its view', async ({ page, editor }) => {
    await openSite(page, editor);
    const lens = page.locator('.codelens-decoration a', { hasText: 'Section and uncertainties' }).nth(1);
    await repeatUntil((within) => lens.click(within), viewIn(page).locator('h1', { hasText: 'K2-MT-102' }));
  });

  it('another rise makes a finding come and go, is written when asked for, and undone at once', async ({
    page,
    editor,
  }) => {
    await openSite(page, editor);
    await goTo(page, placeInSite(editor, 'K2-MT-101:'));
    const view = await openView(page, 'Dewright: Try Other Values', RISE);
    const short = view.locator('li[data-rule=heater-rise-short]');
    await view.locator(RISE).fill('1 K');
    await short.waitFor();
    await view.locator(RISE).fill('6 K');
    await short.waitFor({ state: 'detached' });
    await view.locator(RISE).fill('5');
    await view.locator('.problem', { hasText: '“5” needs a unit: K' }).waitFor();
    await view.locator(RISE).fill('6 K');
    const before = siteText(editor);
    const write = view.locator('button[data-action=write]');
    const written = page.locator('.view-line', { hasText: 'rise: 6 K' });
    await repeatUntil((within) => write.click(within), written);
    await written.click();
    await save(page);
    await expect.poll(() => siteText(editor)).toBe(before.replace('rise: 8 K', 'rise: 6 K'));
    await view.locator('h2', { hasText: 'Findings of the file as it is' }).waitFor();
    await runCommand(page, 'Undo');
    await written.waitFor({ state: 'detached' });
    await save(page);
    await expect.poll(() => siteText(editor)).toBe(before);
  });

  it('all points stand in one table that sorts, filters and leads to the files', async ({ page, editor }) => {
    await openSite(page, editor);
    const view = await openView(page, 'Dewright: Show the Overview of All Points', '#all-points');
    const tags = () => view.locator('tbody tr:visible td:first-child').allInnerTexts();
    await expect.poll(tags).toEqual(['K2-MT-101', 'K2-MT-101', 'K2-MT-102']);
    await view.locator('th button', { hasText: /^Point$/ }).click();
    await view.locator('th button', { hasText: /^Point$/ }).click();
    await expect.poll(tags).toEqual(['K2-MT-102', 'K2-MT-101', 'K2-MT-101']);
    await view.locator('input[type=search]').fill('102 humidity');
    await expect.poll(tags).toEqual(['K2-MT-102']);
    await view.locator('td [data-file]:visible').click();
    await cursorAt(page, { line: 28 }).waitFor();
  });
});
