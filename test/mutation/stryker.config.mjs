/**
 * Mutation testing of the physics and the rules: `npm run mutate`, of some files `npm run mutate -- --mutate FILE,FILE`.
 * It ends with the survivors and the scores, and fails below 85 %. Texts are left as they are: the fixtures hold what a
 * message says where it matters.
 */
export default {
  mutate: ['server/src/physics/**/*.ts', 'server/src/rules/*.ts', '!**/*.generated.ts', '!server/src/rules/rule.ts'],
  mutator: { excludedMutations: ['StringLiteral'] },
  ignoreStatic: true, // what is computed once, as a table is, would cost a whole run for each mutant
  plugins: ['@stryker-mutator/vitest-runner', './test/mutation/compiler.mjs'],
  checkers: ['compiler'],
  testRunner: 'vitest',
  vitest: { configFile: 'test/mutation/vitest.config.mjs' },
  coverageAnalysis: 'perTest',
  timeoutMS: 60_000, // a busy machine must not count as a mutant that was noticed
  reporters: ['clear-text', 'json'],
  clearTextReporter: { allowColor: false, reportTests: false },
  jsonReporter: { fileName: '.cache/mutation/mutants.json' },
  tsconfigFile: 'none.json', // its reader wants an older compiler; the tests need no tsconfig
  ignorePatterns: ['.cache'],
  tempDirName: '.cache/stryker',
  thresholds: { high: 95, low: 90, break: 85 },
};
