/**
 * Runs one of the project's TypeScript programs: `node test/tools/run-typescript.mjs FILE [ARGUMENT ...]`. Node 20 reads
 * no TypeScript, so the program is first bundled into the cache folder.
 */
import { basename, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const [file, ...rest] = process.argv.slice(2);
const program = resolve('.cache', `${basename(file, '.ts')}.mjs`);
await build({
  entryPoints: [file],
  outfile: program,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  packages: 'external',
  logLevel: 'warning',
});
process.argv = [process.argv[0], program, ...rest];
await import(pathToFileURL(program).href);
