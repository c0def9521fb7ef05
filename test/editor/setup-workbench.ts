/**
 * Installs real VS Codes, server and web client, from the npm package `code-server`. Nothing is compiled: what would need
 * a compiler is left out or replaced by a stand-in.
 */
import { chmodSync, copyFileSync, existsSync, mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type Outcome, succeed } from '../../server/src/base/outcome.ts';
import { installOnce, npmInstall } from './install-once.ts';
import { STAND_IN_FOLDER } from './paths.ts';

export interface Workbench {
  /** The version of VS Code. */
  readonly version: string;
  /** The program that serves the workbench, and the Node that runs it. */
  readonly serverMain: string;
  readonly node: string;
}

export interface WorkbenchRelease {
  readonly version: string;
  /** The version of the package that carries it. */
  readonly packageVersion: string;
  /** What it needs from other packages. */
  readonly besides: readonly string[];
  /** The place of its own Node in the folder of its installation, where this one may be too old for it. */
  readonly node?: string;
  readonly effort: string;
}

/** The oldest VS Code that the manifest of the extension allows. Since 1.18 ripgrep comes without an install script. */
export const OLDEST_RELEASE: WorkbenchRelease = {
  version: '1.100.3',
  packageVersion: '4.100.3',
  besides: ['@vscode/ripgrep@1.18.0'],
  effort: 'about 300 MB, half a minute, once',
};

const PLATFORM = `${process.platform}-${process.arch}`;

/** The newest one that the registry had when this line was last changed. */
export const NEWEST_RELEASE: WorkbenchRelease = {
  version: '1.139.1',
  packageVersion: '4.139.1',
  besides: [`node-${PLATFORM}@24`],
  node: `node_modules/node-${PLATFORM}/bin/node`,
  effort: 'about 800 MB, half a minute, once',
};

const STAND_INS = {
  '@vscode/spdlog': 'spdlog',
  '@vscode/native-watchdog': 'native-watchdog',
  'native-watchdog': 'native-watchdog',
};

/** The workbench, installed if it is not there yet, or one sentence that says why it cannot be. */
export function setUpWorkbench(release: WorkbenchRelease, say: (line: string) => void): Outcome<Workbench, string> {
  const { version, packageVersion, node, effort } = release;
  const installed = installOnce(
    { name: `workbench-${packageVersion}`, effort, install: (folder) => install(folder, release) },
    say,
  );
  if (!installed.ok) return installed;
  return succeed({
    version,
    serverMain: join(vscodeIn(installed.value), 'out/server-main.js'),
    node: node === undefined ? process.execPath : join(installed.value, node),
  });
}

function install(folder: string, { packageVersion, besides }: WorkbenchRelease): void {
  npmInstall(folder, `code-server@${packageVersion}`, ...besides);
  npmInstall(vscodeIn(folder), '--omit=dev'); // pinned by the package's own npm-shrinkwrap.json
  const modules = join(vscodeIn(folder), 'node_modules');

  // Without ripgrep `workspace.findFiles` never answers. Newer releases bring it along.
  const ripgrep = join(folder, `node_modules/@vscode/ripgrep-${PLATFORM}/bin/rg`);
  if (existsSync(ripgrep)) {
    const place = join(modules, '@vscode/ripgrep/bin/rg');
    mkdirSync(dirname(place), { recursive: true });
    copyFileSync(ripgrep, place);
    chmodSync(place, 0o755);
  }

  for (const [module, standIn] of Object.entries(STAND_INS)) {
    const program = join(modules, module, 'index.js');
    if (existsSync(program)) copyFileSync(join(STAND_IN_FOLDER, `${standIn}.cjs`), program);
  }
}

function vscodeIn(folder: string): string {
  return join(folder, 'node_modules/code-server/lib/vscode');
}
