/**
 * Keeps what was read of logs on the disk, so that a log is not read again while its content and what it is laid against
 * are the same, in whichever program. The newest answers are kept; each is some ten kilobytes.
 */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, readdir, readFile, rename, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import type { RecordingAnswer } from '../evaluate/recorded/answer.ts';
import type { RecordingRequest } from './messages.ts';

const MOST_KEPT = 64;

/** One word for the content of the log, what is asked of it, and the program that reads it. */
export async function keyOf(
  { path, columns, basis, trustDetection }: RecordingRequest,
  program: Uint8Array,
): Promise<string> {
  const hash = createHash('sha256');
  hash.update(JSON.stringify({ columns, basis, trustDetection })).update(program);
  await pipeline(createReadStream(path, { highWaterMark: 1 << 20 }), hash);
  return hash.digest('hex');
}

export async function keptAnswer(key: string): Promise<RecordingAnswer | undefined> {
  const file = fileOf(key);
  try {
    const answer = JSON.parse(await readFile(file, 'utf8')) as RecordingAnswer;
    const now = new Date();
    await utimes(file, now, now); // the one used longest ago goes first
    return answer;
  } catch {
    return undefined;
  }
}

/** Where the disk takes nothing, the log is read again the next time. */
export async function keepAnswer(key: string, answer: RecordingAnswer): Promise<void> {
  const folder = cacheFolder();
  const unfinished = join(folder, `${key}.${process.pid}`);
  try {
    await mkdir(folder, { recursive: true });
    await writeFile(unfinished, JSON.stringify(answer));
    await rename(unfinished, fileOf(key));
    await forgetOldest(folder);
  } catch {
    await rm(unfinished, { force: true }).catch(() => undefined);
  }
}

async function forgetOldest(folder: string): Promise<void> {
  const names = await readdir(folder);
  if (names.length <= MOST_KEPT) return;
  const files = await Promise.all(
    names.map(async (name) => {
      const file = join(folder, name);
      return { file, used: (await stat(file)).mtimeMs };
    }),
  );
  files.sort((one, other) => other.used - one.used);
  for (const { file } of files.slice(MOST_KEPT)) await rm(file, { force: true });
}

function fileOf(key: string): string {
  return join(cacheFolder(), `${key}.json`);
}

/** Where each system wants what a program may lose: XDG, Windows, macOS. */
function cacheFolder(): string {
  const { XDG_CACHE_HOME, LOCALAPPDATA } = process.env;
  const own = join('dewright', 'recordings');
  if (XDG_CACHE_HOME) return join(XDG_CACHE_HOME, own);
  if (process.platform === 'win32' && LOCALAPPDATA) return join(LOCALAPPDATA, own);
  return join(homedir(), process.platform === 'darwin' ? 'Library/Caches' : '.cache', own);
}
