/** The browser that shows the workbench: a Chromium of this machine, driven through playwright-core. */
import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';
import { fail, type Outcome, succeed } from '../../server/src/base/outcome.ts';

const USUAL_PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

/** The program of a Chromium: the one that the environment variable CHROMIUM names, else one in a usual place. */
export function findChromium(): Outcome<string, string> {
  const named = process.env.CHROMIUM;
  const found = (named === undefined ? USUAL_PLACES : [named]).find((place) => existsSync(place));
  if (found !== undefined) return succeed(found);
  return fail('There is no Chromium for the editor tests: install one, or name its program in CHROMIUM.');
}

export function startBrowser(program: string): Promise<Browser> {
  return chromium.launch({
    executablePath: program,
    // Its own sandbox does not work for root, as in a container; the only page it opens is served by the test.
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--no-first-run'],
  });
}
