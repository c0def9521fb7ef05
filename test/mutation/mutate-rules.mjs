/**
 * Mutation testing of rules, each against the tests of its own fixture: `npm run mutate:rules -- [RULE ...]`, without
 * names for all of them. Prints the survivors and the score of all; exit status 1 below 85 %.
 */
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';

const LEAST_SCORE = 0.85;

const given = process.argv.slice(2);
const rules =
  given.length > 0 ? given : readdirSync('test/rules').filter((name) => !name.includes('.') && name !== 'kits');
let killed = 0;
let tried = 0;
for (const rule of rules) {
  const { status } = spawnSync('npx', ['stryker', 'run', 'test/mutation/stryker.config.mjs'], {
    env: { ...process.env, DEWRIGHT_RULE: rule },
    stdio: 'inherit',
  });
  if (status !== 0) throw new Error(`the mutants of ${rule} could not be tried`);
  const { files } = JSON.parse(readFileSync(`.cache/mutation/${rule}.json`, 'utf8'));
  const states = Object.values(files).flatMap(({ mutants }) => mutants.map((mutant) => mutant.status));
  const count = (...wanted) => states.filter((state) => wanted.includes(state)).length;
  const noticed = count('Killed', 'Timeout');
  const all = noticed + count('Survived', 'NoCoverage');
  console.log(`${rule}: ${noticed} of ${all}`);
  killed += noticed;
  tried += all;
}
console.log(`${killed} of ${tried} mutants were noticed, ${((100 * killed) / tried).toFixed(1)} %`);
process.exitCode = killed >= LEAST_SCORE * tried ? 0 : 1;
