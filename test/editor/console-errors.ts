/** Collects what goes wrong in the page, so that a test can demand that nothing did. */
import type { Page } from 'playwright-core';

/** What this workbench always says where it has no gallery, no update service and no closed-source module. */
const HARMLESS =
  /vsda|favicon|templates\.png|update\/check|serviceWorker|fetching the script|extensionquery|TranslationsUri/i;

/** A list that grows as errors come. */
export function watchConsoleErrors(page: Page): readonly string[] {
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    const text = `${message.text()} ${message.location().url}`;
    if (message.type() === 'error' && !HARMLESS.test(text)) errors.push(text);
  });
  return errors;
}
