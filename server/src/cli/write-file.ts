/** Writes a file whole or not at all. */
import {
  chmodSync,
  closeSync,
  existsSync,
  fsyncSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { reasonOf } from './load.ts';
import { CallProblem } from './problem.ts';

/** Writes beside the file, to disk, then puts it in place: an old file stands until the new one is complete. */
export function replaceFile(path: string, content: string | Uint8Array): void {
  const old = statSync(path, { throwIfNoEntry: false });
  const target = old === undefined ? resolve(path) : realpathSync(path);
  if (!existsSync(dirname(target))) throw new CallProblem(`${path}: there is no such folder`);
  const beside = join(dirname(target), `.${basename(target)}.${process.pid}.new`);
  try {
    const handle = openSync(beside, 'wx');
    try {
      writeWhole(handle, Buffer.from(content));
      if (old !== undefined) chmodSync(beside, old.mode);
      renameSync(beside, target);
    } catch (error) {
      rmSync(beside, { force: true });
      throw error;
    }
  } catch (error) {
    const stands = old === undefined ? '' : '; the file stands as it was';
    throw new CallProblem(`${path}: ${reasonOf(error)}${stands}`);
  }
}

function writeWhole(handle: number, bytes: Uint8Array): void {
  try {
    for (let written = 0; written < bytes.length; ) written += writeSync(handle, bytes, written);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
