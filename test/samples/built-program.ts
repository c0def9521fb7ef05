/** Runs the built command line as a user does. `npm test` has built it before. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';
import { SAMPLES_FOLDER } from './sample-files.ts';

const PROGRAM = fileURLToPath(new URL('../../server/dist/cli.js', import.meta.url));

export interface Run {
  readonly status: number | null;
  readonly output: string;
  readonly errors: string;
}

export function runIn(folder: string, ...words: readonly string[]): Run {
  const { status, stdout, stderr } = spawnSync(process.execPath, [PROGRAM, ...words], {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  return { status, output: stdout, errors: stderr };
}

/** An empty folder, alone in its own, that goes when the test is over: the program also looks one folder up. */
export function temporaryFolder(): string {
  const outer = mkdtempSync(join(tmpdir(), 'dewright-samples-'));
  onTestFinished(() => rmSync(outer, { recursive: true, force: true }));
  const folder = join(outer, 'files');
  mkdirSync(folder);
  return folder;
}

export function copyOfSamples(): string {
  const folder = temporaryFolder();
  cpSync(SAMPLES_FOLDER, folder, { recursive: true });
  return folder;
}
