/** `npm run try`: VS Code in the browser with the extension installed and a copy of the samples open. */
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { packExtension } from './editor-under-test.ts';
import { PROJECT_ROOT } from './paths.ts';
import { OLDEST_RELEASE, setUpWorkbench, type Workbench } from './setup-workbench.ts';
import { startWorkbenchServer } from './workbench-server.ts';

const workbench = setUpWorkbench(OLDEST_RELEASE, console.log);
if (workbench.ok) await serve(workbench.value);
else {
  console.error(workbench.problem);
  process.exitCode = 1;
}

async function serve(installed: Workbench): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'dewright-try-'));
  const samples = join(folder, 'samples');
  cpSync(join(PROJECT_ROOT, 'samples'), samples, { recursive: true });
  const server = await startWorkbenchServer(installed, { vsix: packExtension(folder) });
  console.log(`
Open this in a browser; only this machine can reach it:
  ${server.pageOf(samples)}
It shows a copy of the samples, so change what you like. Ctrl+C ends it.`);
  process.once('SIGINT', async () => {
    await server.stop();
    rmSync(folder, { recursive: true });
  });
}
