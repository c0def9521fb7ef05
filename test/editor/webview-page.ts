/**
 * What a user sees and does in a view beside the file:
 *
 *     const view = await openView(page, 'Dewright: Show the Moist-Air Chart', 'svg.drawing');
 *     await view.locator('[data-file]', { hasText: 'warm-up' }).click();
 *     expect(await accessibilityFaults(view)).toEqual([]);
 *
 * What the page's content policy refuses stands in the console, so `watchConsoleErrors` tells of it.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { FrameLocator, Page } from 'playwright-core';
import { runCommand } from './workbench-page.ts';

/** Found anew for whatever is done in it, for the editor makes its frames anew whenever the view had been hidden. */
export type View = FrameLocator;

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
/** The views are part of the editor: what is demanded of whole pages besides is for the editor to do. */
const STANDARDS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'best-practice'];

/** The one view that is in sight. */
export function viewIn(page: Page): View {
  return page.locator('iframe.webview').filter({ visible: true }).contentFrame().frameLocator('#active-frame');
}

/** Opens a view by the title of its command, and waits until it shows what is expected. */
export async function openView(page: Page, command: string, expected: string): Promise<View> {
  await runCommand(page, command);
  const view = viewIn(page);
  await view.locator(expected).first().waitFor();
  return view;
}

/** What axe-core finds in a view that hinders people: each rule that is broken, with the elements that break it. */
export async function accessibilityFaults(view: View): Promise<readonly string[]> {
  const body = view.locator('body');
  await body.evaluate(readFileSync(AXE, 'utf8'));
  const run = `axe.run(document, { runOnly: ${JSON.stringify(STANDARDS)}, resultTypes: ['violations'] })`;
  const { violations }: AxeResult = await body.evaluate(run);
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
