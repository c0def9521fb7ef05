/**
 * Mutation testing: `npm run mutate` tries the physics, `DEWRIGHT_MUTATE=rules npm run mutate` the rules. It ends with
 * the list of survivors. Texts are left as they are: the fixtures hold what a message says where it matters.
 */
const module = process.env.DEWRIGHT_MUTATE ?? 'physics';

export default {
  mutate: [`server/src/${module}/**/*.ts`, '!**/*.generated.ts'],
  mutator: { excludedMutations: ['StringLiteral'] },
  ignoreStatic: true, // what is computed once, as a table is, would cost a whole run for each mutant
  testRunner: 'vitest',
  vitest: { configFile: 'test/mutation/vitest.config.mjs' },
  coverageAnalysis: 'perTest',
  timeoutMS: 5000,
  reporters: ['progress', 'clear-text', 'json'],
  clearTextReporter: { allowColor: false, reportTests: false, logTests: false },
  jsonReporter: { fileName: `.cache/mutation-${module}.json` },
  tsconfigFile: 'none.json', // its reader wants an older compiler; the tests need no tsconfig
  tempDirName: '.cache/stryker',
  thresholds: { high: 95, low: 90, break: 85 },
};
