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

/** ms, for anything: a busy machine needs ten times as long as an idle one, and only a test that fails waits as long. */
export const PATIENCE = 60_000;
/** ms, doubled with each try: what is only late is asked for no more often than it is answered. */
const FIRST_TRY = 2_000;

export async function openWorkbench(page: Page, server: WorkbenchServer, folder: string, file: string): Promise<void> {
  const payload = JSON.stringify([['openFile', server.addressOf(`${folder}/${file}`)]]);
  await page.goto(server.pageOf(folder, { payload }));
  await page.locator('.monaco-editor .view-line').first().waitFor({ timeout: PATIENCE });
}

/** Runs a command by the title that the palette shows. */
export async function runCommand(page: Page, title: string): Promise<void> {
  const row = page.locator(`.quick-input-list .monaco-list-row[aria-label^="${title}"]`).first();
  await repeatUntil((within) => fillQuickInput(page, 'F1', `>${title}`, within), row);
  await row.click();
}

export async function goTo(page: Page, place: Place): Promise<void> {
  await repeatUntil(
    async (within) => {
      await fillQuickInput(page, 'Control+g', `:${place.line},${place.column}`, within);
      await page.keyboard.press('Enter');
    },
    cursorAt(page, place),
  );
  await page.locator('.monaco-editor.focused').first().waitFor();
}

/** What the status bar says when the cursor is at a place, or anywhere in a line. */
export function cursorAt(page: Page, { line, column }: { readonly line: number; readonly column?: number }): Locator {
  const words = new RegExp(`Ln ${line}, Col ${column ?? '\\d+'}(?!\\d)`);
  return page.locator('.statusbar-item', { hasText: words }).first();
}

/** The Problems panel, which is opened where it is not. */
export async function showProblems(page: Page): Promise<Locator> {
  const panel = page.locator('.markers-panel');
  if (!(await panel.isVisible())) await runCommand(page, 'Problems: Focus on Problems View');
  return panel;
}

/** The rows of the Problems panel. */
export async function problems(page: Page): Promise<readonly Problem[]> {
  const panel = await showProblems(page);
  return panel.locator('.monaco-list').evaluate(readProblems);
}

/** All rows at one moment, since the panel draws them anew as findings come. It draws only those that are in sight. */
function readProblems(list: PageElement): readonly Problem[] {
  const [rows] = list.querySelectorAll('.monaco-list-rows');
  if (rows !== undefined && rows.offsetHeight > list.offsetHeight) throw new Error('not all problems are in sight');
  return [...list.querySelectorAll('.monaco-list-row:has(.marker-message)')].map((row) => {
    const textOf = (part: string): string => row.querySelectorAll(part)[0]?.textContent ?? '';
    return {
      severity: row.getAttribute('aria-label')?.split(':')[0] ?? '',
      message: textOf('.marker-message'),
      source: textOf('.marker-source'),
      code: textOf('.marker-code'),
      place: textOf('.marker-line'),
    };
  });
}

/** The page has it; the types of Node do not know it. */
interface PageElement {
  readonly offsetHeight: number;
  readonly textContent: string | null;
  getAttribute(name: string): string | null;
  querySelectorAll(selector: string): readonly PageElement[];
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
  const chosen = page.locator('.action-widget .monaco-list-row.focused', { hasText: title });
  await repeatUntil(async () => {
    const rows = await showQuickFixes(page, place);
    for (let left = await rows.count(); left > 0 && !(await chosen.isVisible()); left--) {
      await page.keyboard.press('ArrowDown');
    }
  }, chosen);
  await page.keyboard.press('Enter');
}

/** What is looked for: some words, or an element. */
export type Shown = { readonly hasText: string | RegExp } | { readonly has: Locator };

/** The hover at a place, once it shows what is looked for. */
export async function hoverAt(page: Page, place: Place, shown: Shown): Promise<Locator> {
  await goTo(page, place);
  return hoverHere(page, shown);
}

/** The hover where the cursor is. One that is asked for while the server starts never gets its words: ask anew. */
export function hoverHere(page: Page, shown: Shown): Promise<Locator> {
  const hover = page.locator('.monaco-hover:has(.hover-contents)', shown).filter({ visible: true }).first();
  return pressUntilVisible(page, ['Escape', 'Control+k', 'Control+i'], hover);
}

export async function save(page: Page): Promise<void> {
  const dirty = page.locator('.tab.active.dirty');
  await dirty.waitFor();
  await repeatUntil(() => page.keyboard.press('Control+s'), dirty, 'hidden');
}

export function pressUntilVisible(page: Page, keys: readonly string[], expected: Locator): Promise<Locator> {
  return repeatUntil(async () => {
    for (const key of keys) await page.keyboard.press(key);
  }, expected);
}

/** ms, as the functions of a page take it. */
export interface Within {
  readonly timeout: number;
}

/**
 * A key that is pressed while the focus moves is lost, as just after a quick input closed, and so is a click on what is
 * just drawn anew: do it again until it worked. What cannot be done again may have worked already.
 * @param act gets told how long it may take this time
 */
export async function repeatUntil(
  act: (within: Within) => Promise<unknown>,
  expected: Locator,
  state: 'visible' | 'hidden' = 'visible',
): Promise<Locator> {
  const deadline = Date.now() + PATIENCE;
  for (let timeout = FIRST_TRY; ; timeout *= 2) {
    const hindrance = await act({ timeout }).then(
      () => undefined,
      (error: unknown) => error,
    );
    try {
      await expected.waitFor({ state, timeout });
      return expected;
    } catch (error) {
      if (Date.now() > deadline) throw hindrance ?? error;
    }
  }
}

/** A quick input that is shown already takes the text of any other kind, and its key pressed again would empty it. */
async function fillQuickInput(page: Page, key: string, text: string, within: Within): Promise<void> {
  const input = page.locator('.quick-input-widget input').filter({ visible: true }).first();
  if (!(await input.isVisible())) await page.keyboard.press(key);
  await input.fill(text, within);
}
