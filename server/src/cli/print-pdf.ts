/** HTML printed to PDF by a Chromium of this machine, where there is one. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { CallProblem } from './problem.ts';

/** Names of the program on the search path, then places where other systems keep it. */
const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome', 'msedge'];
const PLACES = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  join(process.env['ProgramFiles'] ?? '', 'Google', 'Chrome', 'Application', 'chrome.exe'),
  join(process.env['ProgramFiles(x86)'] ?? '', 'Microsoft', 'Edge', 'Application', 'msedge.exe'),
];

const LONGEST_WAIT = 120_000;

/** The program that the environment variable CHROMIUM names, else one in a usual place. */
export function findChromium(): string | undefined {
  const named = process.env['CHROMIUM'] ?? '';
  if (named !== '') return named;
  const folders = (process.env['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '');
  const ending = process.platform === 'win32' ? '.exe' : '';
  const onPath = NAMES.flatMap((name) => folders.map((folder) => join(folder, `${name}${ending}`)));
  return [...onPath, ...PLACES].find((program) => existsSync(program));
}

/** Works in a folder of its own, with a profile of its own, and leaves nothing behind. */
export function printPdf(chromium: string, html: string): Uint8Array {
  const folder = mkdtempSync(join(tmpdir(), 'dewright-pack-'));
  const [page, pdf] = [join(folder, 'pack.html'), join(folder, 'pack.pdf')];
  try {
    writeFileSync(page, html);
    execFileSync(chromium, [...wordsFor(folder), `--print-to-pdf=${pdf}`, pathToFileURL(page).href], {
      stdio: 'ignore',
      timeout: LONGEST_WAIT,
    });
    return readFileSync(pdf);
  } catch {
    throw new CallProblem(
      `${chromium}: it could not print the pack; write FILE.html instead, or name another in CHROMIUM`,
    );
  } finally {
    rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
  }
}

function wordsFor(folder: string): readonly string[] {
  const words = [
    '--headless',
    '--disable-gpu',
    '--disable-extensions',
    '--no-first-run',
    '--no-pdf-header-footer',
    '--generate-pdf-document-outline',
    `--user-data-dir=${join(folder, 'profile')}`,
  ];
  // Chromium refuses its sandbox to the superuser, as whom containers often run. The page is ours and has no script.
  return process.getuid?.() === 0 ? [...words, '--no-sandbox'] : words;
}
