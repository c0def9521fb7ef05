/**
 * Mutation testing of the physics, `npm run mutate`, or of one rule, as mutate-rules.mjs does. It ends with the list of
 * survivors. Texts are left as they are: the fixtures hold what a message says where it matters.
 */
import { MODULE, NAME, RULE } from './mutated.mjs';

export default {
  mutate: [`server/src/${MODULE}/${RULE ?? '**/*'}.ts`, '!**/*.generated.ts'],
  mutator: { excludedMutations: ['StringLiteral'] },
  ignoreStatic: true, // what is computed once, as a table is, would cost a whole run for each mutant
  testRunner: 'vitest',
  vitest: { configFile: 'test/mutation/vitest.config.mjs' },
  coverageAnalysis: 'perTest',
  timeoutMS: 60_000, // a busy machine must not count as a mutant that was noticed
  reporters: [...(RULE === undefined ? ['progress'] : []), 'clear-text', 'json'],
  clearTextReporter: { allowColor: false, reportTests: false, reportScoreTable: RULE === undefined },
  jsonReporter: { fileName: `.cache/mutation/${NAME}.json` },
  tsconfigFile: 'none.json', // its reader wants an older compiler; the tests need no tsconfig
  tempDirName: '.cache/stryker',
  logLevel: RULE === undefined ? 'info' : 'error',
  thresholds: { high: 95, low: 90, break: RULE === undefined ? 85 : null },
};
