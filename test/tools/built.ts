/** Builds the program once, before the tests that run it. */
import { spawnSync } from 'node:child_process';

export default function setup(): void {
  const { status } = spawnSync(process.execPath, ['esbuild.mjs'], { stdio: ['ignore', 'ignore', 'inherit'] });
  if (status !== 0) throw new Error('the program could not be built, see above');
}
