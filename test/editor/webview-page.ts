/**
 * What a user sees and does in a view beside the file. A test of a view runs its command and gets the frame of its page:
 *
 *     const view = await openView(page, 'Dewright: Show the Moist-Air Chart', 'svg.drawing');
 *     await view.locator('[data-file]', { hasText: 'warm-up' }).click();
 *     expect(await accessibilityFaults(view)).toEqual([]);
 *
 * What the page's content policy refuses stands in the console, so `watchConsoleErrors` tells of it.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Frame, Page } from 'playwright-core';
import { runCommand } from './workbench-page.ts';

const PATIENCE = 20_000;
const BETWEEN_LOOKS = 100;
const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
/** The views are part of the editor: what is demanded of whole pages besides is for the editor to do. */
const STANDARDS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'best-practice'];

/** Opens a view by the title of its command, and waits until it shows what is expected. */
export async function openView(page: Page, command: string, expected: string): Promise<Frame> {
  await runCommand(page, command);
  return viewWith(page, expected);
}

/** The frame of the view that shows what is expected; the editor makes it anew whenever the view had been hidden. */
export async function viewWith(page: Page, expected: string): Promise<Frame> {
  const deadline = Date.now() + PATIENCE;
  while (Date.now() < deadline) {
    for (const frame of page.frames()) {
      const isShown = await frame
        .locator(expected)
        .first()
        .isVisible()
        .catch(() => false);
      if (isShown) return frame;
    }
    await page.waitForTimeout(BETWEEN_LOOKS);
  }
  throw new Error(`no view shows ${expected}`);
}

/** What axe-core finds in a view that hinders people: each rule that is broken, with the elements that break it. */
export async function accessibilityFaults(view: Frame): Promise<readonly string[]> {
  await view.evaluate(readFileSync(AXE, 'utf8'));
  const run = `axe.run(document, { runOnly: ${JSON.stringify(STANDARDS)}, resultTypes: ['violations'] })`;
  const { violations } = (await view.evaluate(run)) as AxeResult;
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
}

interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly impact: string;
    readonly nodes: readonly { readonly html: string }[];
  }[];
}
