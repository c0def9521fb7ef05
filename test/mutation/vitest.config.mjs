/** The tests that mutants are tried against. */
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/{physics,rules}/**/*.test.ts'],
    setupFiles: ['test/tools/fast-check-seed.ts', 'test/mutation/own-tests.ts'],
    testTimeout: 30_000,
    isolate: false, // the code is loaded once, not for each mutant
  },
});
