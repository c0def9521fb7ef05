/** The tests that mutants are tried against. */
import { defineConfig } from 'vitest/config';
import { MODULE } from './mutated.mjs';

export default defineConfig({
  test: {
    include: [`test/${MODULE}/**/*.test.ts`],
    setupFiles: ['test/tools/fast-check-seed.ts', 'test/mutation/own-tests.ts'],
    testTimeout: 30_000,
  },
});
