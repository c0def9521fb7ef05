/**
 * `npm start` and `npm test` from a fresh clone, with Node and nothing else: installs what is missing, builds, then
 * shows the program at work or runs every check.
 */
import { spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';

const OLDEST_NODE = 20;
const [task, ...rest] = process.argv.slice(2);

if (Number.parseInt(process.versions.node, 10) < OLDEST_NODE) {
  stop(`Dewright needs Node ${OLDEST_NODE} or newer; this is Node ${process.versions.node}.`);
}
if (task === 'start') start();
else if (task === 'test') test();
else stop('usage: node server/tools/bootstrap.mjs start|test');

function start() {
  if (install() !== 0 || build() !== 0) stop('Dewright could not be installed and built; see above.');
  const status = node('server/dist/cli.js', 'check', 'samples', '--fail-on', 'never');
  console.log(`
What to try next
  node server/dist/cli.js check FILE.dewsite.yaml    your own file
  node server/dist/cli.js calc air-temperature='60 degC' relative-humidity='85 %RH' pressure='99 kPa'
  npm run try                                        the same findings, with fixes, in VS Code`);
  process.exitCode = status;
}

/** The last line is always `N passed, N failed`. A step before the tests that fails counts as one failed check. */
function test() {
  const steps = [
    ['install', install],
    ['types', () => node('node_modules/typescript/bin/tsc', '--noEmit')],
    ['types of the pages', () => node('node_modules/typescript/bin/tsc', '--noEmit', '-p', 'client/src/views/page')],
    ['lint', () => node('node_modules/@biomejs/biome/bin/biome', 'check', '--diagnostic-level=warn')],
    ['build', build],
  ];
  for (const [name, run] of steps) {
    if (run() === 0) continue;
    console.log(`The tests did not run, because of what the step "${name}" found above.\n0 passed, 1 failed`);
    process.exitCode = 1;
    return;
  }
  process.exitCode = node('node_modules/vitest/vitest.mjs', 'run', ...rest);
}

/** npm writes its own copy of the lock file last, so a lock file newer than that copy is not installed yet. */
function install() {
  const installed = modified('node_modules/.package-lock.json');
  if (installed !== undefined && installed >= (modified('package-lock.json') ?? 0)) return 0;
  console.error('Installing the libraries (npm ci); this takes about a minute the first time.');
  const shell = process.platform === 'win32'; // there npm is a script, which only a shell can start
  return spawnSync('npm', ['ci', '--no-audit', '--no-fund'], { stdio: ['inherit', 2, 2], shell }).status ?? 1;
}

/** Always made anew: it takes less time than finding out whether it is stale. */
function build() {
  return node('esbuild.mjs');
}

function node(...args) {
  return spawnSync(process.execPath, args, { stdio: 'inherit' }).status ?? 1;
}

function modified(file) {
  return statSync(file, { throwIfNoEntry: false })?.mtimeMs;
}

function stop(sentence) {
  console.error(sentence);
  process.exit(1);
}
