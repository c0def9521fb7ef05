/** Replaces a file whole or not at all. */
import {
  chmodSync,
  closeSync,
  fsyncSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { reasonOf } from './load.ts';
import { CallProblem } from './problem.ts';

/** Writes beside the file, to disk, then puts it in place: the old file stands until the new one is complete. */
export function replaceFile(path: string, text: string): void {
  const target = realpathSync(path);
  const beside = join(dirname(target), `.${basename(target)}.${process.pid}.new`);
  try {
    const handle = openSync(beside, 'wx');
    try {
      const bytes = Buffer.from(text, 'utf8');
      for (let written = 0; written < bytes.length; ) written += writeSync(handle, bytes, written);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    chmodSync(beside, statSync(target).mode);
    renameSync(beside, target);
  } catch (error) {
    rmSync(beside, { force: true });
    throw new CallProblem(`${path}: ${reasonOf(error)}; the file stands as it was`);
  }
}
