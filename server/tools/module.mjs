/**
 * Checks one module of the server with its tests: `npm run module -- evaluate/budget`. Types are checked for the whole,
 * since a module is known by what others make of it.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const [module] = process.argv.slice(2);
const [source, mirror] = [`server/src/${module}`, `test/${module}`];
if (module === undefined || !existsSync(source) || !existsSync(mirror)) {
  console.error(
    `usage: npm run module -- MODULE, such as evaluate/budget: a folder of server/src that has one in test`,
  );
  process.exit(2);
}

const steps = [
  ['node_modules/typescript/bin/tsc', '--noEmit'],
  ['node_modules/@biomejs/biome/bin/biome', 'check', '--diagnostic-level=warn', source, mirror],
  ['node_modules/vitest/vitest.mjs', 'run', '--project', 'unit', '--project', 'thorough', `${mirror}/`],
];
const failed = steps.find((step) => spawnSync(process.execPath, step, { stdio: 'inherit' }).status !== 0);
process.exitCode = failed === undefined ? 0 : 1;
