/** Collects what goes wrong in the page, so that a test can demand that nothing did. */
import type { Page } from 'playwright-core';

/** What these workbenches always say where they have no gallery, no update service, no account and no closed-source module. */
const HARMLESS =
  /vsda|favicon|templates\.png|update\/check|serviceWorker|fetching the script|No extension gallery|authentication provider/i;

/** What they say where the machine is busy: whoever would have a say in saving was not asked for long. */
const LATE = /Aborted onWillSaveTextDocument-event after \d+ms/;

/** A list that grows as errors come. */
export function watchConsoleErrors(page: Page): readonly string[] {
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    const text = `${message.text()} ${message.location().url}`;
    if (message.type() === 'error' && !HARMLESS.test(text) && !LATE.test(text)) errors.push(text);
  });
  return errors;
}
