/** Harms whole folders of files and has the built command line check them, as a person's machine does. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { mutate } from './mutations.ts';
import { Random } from './random.ts';
import { SEED_FILES } from './seed-files.ts';

/** What may be said beside the findings: a recording that a visit names may not be there. */
const SENTENCES = /^(dewright: .+\.\n)*$/;

const PROGRAM = resolve('server/dist/cli.js');

/** @returns what was wrong with the program's answer, in one line; undefined where nothing was */
export function checkHarmedFolder(files: number, seed: number): string | undefined {
  const random = new Random(seed);
  const folder = mkdtempSync(join(tmpdir(), 'dewright-fuzz-'));
  try {
    mkdirSync(join(folder, 'kits'));
    for (let index = 0; index < files; index++) {
      const { kind, text } = random.pick(SEED_FILES);
      const name = `${random.chance(0.3) ? 'kits/' : ''}file-${index}.dew${kind}.yaml`;
      writeFileSync(join(folder, name), mutate(text, random, random.pick(SEED_FILES).text));
    }
    const format = random.pick(['text', 'json', 'sarif', 'junit', 'github']);
    const words = [PROGRAM, 'check', '--format', format];
    const { status, stdout, stderr } = spawnSync(process.execPath, words, {
      cwd: folder,
      encoding: 'utf8',
      maxBuffer: 2 ** 29,
      timeout: 60_000 + 100 * files,
    });
    if (status !== 0 && status !== 1) return `${format}: status ${status}: ${stderr.slice(0, 300)}`;
    if (!SENTENCES.test(stderr)) return `${format}: says ${stderr.slice(0, 300)}`;
    if (/\bNaN\b|\bInfinity\b|\n {4}at /.test(stdout)) return `${format}: shows what it should not`;
    if (format === 'json' || format === 'sarif') JSON.parse(stdout);
    return undefined;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
