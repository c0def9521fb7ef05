/** What a user does in the workbench, by keyboard and by what the page shows. */
import type { Locator, Page } from 'playwright-core';
import type { WorkbenchServer } from './workbench-server.ts';

/** A row of the Problems panel. Line and column count from 1, as the panel shows them. */
export interface Problem {
  readonly severity: string;
  readonly message: string;
  readonly source: string;
  readonly code: string;
  readonly place: string;
}

/** Line and column from 1. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/** Where these words first stand in a text, or first after other words. */
export function placeIn(text: string, words: string, after = ''): Place {
  const before = text.slice(0, text.indexOf(words, text.indexOf(after))).split('\n');
  return { line: before.length, column: (before.at(-1) ?? '').length + 1 };
}

const PATIENCE = 20_000;
const BETWEEN_TRIES = 2_500;

export async function openWorkbench(page: Page, server: WorkbenchServer, folder: string, file: string): Promise<void> {
  const payload = JSON.stringify([['openFile', server.addressOf(`${folder}/${file}`)]]);
  await page.goto(server.pageOf(folder, { payload }));
  await page.locator('.monaco-editor .view-line').first().waitFor({ timeout: 60_000 });
}

/** Runs a command by the title that the palette shows. */
export async function runCommand(page: Page, title: string): Promise<void> {
  await fillQuickInput(page, 'F1', `>${title}`);
  await page.locator(`.quick-input-list .monaco-list-row[aria-label^="${title}"]`).first().click();
}

export async function goTo(page: Page, { line, column }: Place): Promise<void> {
  await fillQuickInput(page, 'Control+g', `:${line},${column}`);
  await page.keyboard.press('Enter');
  await page.locator('.monaco-editor.focused').first().waitFor();
}

/** The rows of the Problems panel, which is opened where it is not. */
export async function problems(page: Page): Promise<readonly Problem[]> {
  const panel = page.locator('.markers-panel');
  if (!(await panel.isVisible())) await runCommand(page, 'Problems: Focus on Problems View');
  await panel.waitFor();
  const rows = await page.locator('.markers-panel .monaco-list-row:has(.marker-message)').all();
  return Promise.all(rows.map(problemIn));
}

async function problemIn(row: Locator): Promise<Problem> {
  const text = async (selector: string): Promise<string> => (await row.locator(selector).textContent()) ?? '';
  return {
    severity: (await row.getAttribute('aria-label'))?.split(':')[0] ?? '',
    message: await text('.marker-message'),
    source: await text('.marker-source'),
    code: await text('.marker-code'),
    place: await text('.marker-line'),
  };
}

/** Opens the list of the fixes that are offered at a place. */
export async function showQuickFixes(page: Page, place: Place): Promise<Locator> {
  await goTo(page, place);
  const rows = page.locator('.action-widget .monaco-list-row.action');
  await pressUntilVisible(page, ['Control+.'], rows.first());
  return rows;
}

/** Takes a fix that is offered at a place, by keyboard. */
export async function takeQuickFix(page: Page, place: Place, title: string): Promise<void> {
  const rows = await showQuickFixes(page, place);
  const chosen = page.locator('.action-widget .monaco-list-row.focused', { hasText: title });
  for (let left = await rows.count(); left > 0 && !(await chosen.isVisible()); left--) {
    await page.keyboard.press('ArrowDown');
  }
  await chosen.waitFor();
  await page.keyboard.press('Enter');
}

/** The hover at a place. Its parts arrive one by one, so wait for the text that is expected in it. */
export async function hoverAt(page: Page, place: Place): Promise<Locator> {
  await goTo(page, place);
  return hoverHere(page);
}

/** The hover where the cursor is. */
export function hoverHere(page: Page): Promise<Locator> {
  const hover = page.locator('.monaco-hover:has(.hover-contents)').filter({ visible: true }).first();
  return pressUntilVisible(page, ['Control+k', 'Control+i'], hover);
}

export async function save(page: Page): Promise<void> {
  await page.locator('.tab.active.dirty').waitFor();
  await page.keyboard.press('Control+s');
  await page.locator('.tab.active.dirty').waitFor({ state: 'detached' });
}

export function pressUntilVisible(page: Page, keys: readonly string[], expected: Locator): Promise<Locator> {
  return repeatUntilVisible(async () => {
    for (const key of keys) await page.keyboard.press(key);
  }, expected);
}

/**
 * A key that is pressed while the focus moves is lost, as just after a quick input closed, and so is a click on what is
 * just drawn anew: do it again until it worked.
 */
export async function repeatUntilVisible(act: () => Promise<void>, expected: Locator): Promise<Locator> {
  const deadline = Date.now() + PATIENCE;
  for (;;) {
    await act();
    try {
      await expected.waitFor({ timeout: BETWEEN_TRIES });
      return expected;
    } catch (error) {
      if (Date.now() > deadline) throw error;
    }
  }
}

async function fillQuickInput(page: Page, key: string, text: string): Promise<void> {
  const input = page.locator('.quick-input-widget input').filter({ visible: true }).first();
  await pressUntilVisible(page, [key], input);
  await input.fill(text);
}
