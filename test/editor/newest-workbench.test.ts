/** What users do most, in the newest VS Code; the other tests of the workbench run in the oldest. */
import { expect } from 'vitest';
import { openSite, placeInSite, siteText } from './faulty-site.ts';
import { itInEditor } from './page-of-test.ts';
import { describeInNewestEditor } from './running-editor.ts';
import { NEWEST_RELEASE } from './setup-workbench.ts';
import { accessibilityFaults, openView } from './webview-page.ts';
import { hoverAt, problems, save, takeQuickFix } from './workbench-page.ts';

const it = itInEditor({ isNewest: true });

describeInNewestEditor(`in the workbench of VS Code ${NEWEST_RELEASE.version}`, () => {
  it.beforeEach(({ page, editor }) => openSite(page, editor));

  it('a finding stands in the Problems panel, and its quick fix ends on disk', async ({ page, editor }) => {
    await expect
      .poll(() => problems(page))
      .toContainEqual(expect.objectContaining({ severity: 'Error', code: 'air-temperature-missing' }));
    await takeQuickFix(page, placeInSite(editor, 'relative-humidity:'), 'Report dew point instead');
    await save(page);
    await expect.poll(() => siteText(editor)).toMatch(/reports:\n +dew-point: .*\n +supply:/);
  });

  it('a hover shows, and a view opens beside the file and hinders nobody', async ({ page, editor }) => {
    await hoverAt(page, placeInSite(editor, 'kiln-2:'), { hasText: 'Highest dew point' });
    await page.keyboard.press('Escape');
    const view = await openView(page, 'Dewright: Show the Moist-Air Chart', 'svg.drawing');
    expect(await accessibilityFaults(view)).toEqual([]);
  });
});
