/** `npm run try`: VS Code in the browser with the extension installed and a copy of the samples open. */
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { packExtension } from './editor-under-test.ts';
import { projectRoot } from './paths.ts';
import { setUpWorkbench } from './setup-workbench.ts';
import { startWorkbenchServer } from './workbench-server.ts';

const folder = mkdtempSync(join(tmpdir(), 'dewright-try-'));
const workbench = setUpWorkbench(console.log);
const vsix = packExtension(folder);
if (!workbench.ok) giveUp(workbench.problem);
else if (!vsix.ok) giveUp(vsix.problem);
else await serve(workbench.value.serverMain, vsix.value);

async function serve(serverMain: string, packed: string): Promise<void> {
  const samples = join(folder, 'samples');
  cpSync(join(projectRoot, 'samples'), samples, { recursive: true });
  const server = await startWorkbenchServer({ serverMain }, { vsix: packed });
  console.log(`
Open this in a browser; only this machine can reach it:
  ${server.pageOf(samples)}
It shows a copy of the samples, so change what you like. Ctrl+C ends it.`);
  process.once('SIGINT', async () => {
    await server.stop();
    rmSync(folder, { recursive: true });
  });
}

function giveUp(sentence: string): void {
  console.error(sentence);
  rmSync(folder, { recursive: true });
  process.exitCode = 1;
}
