/** The tests that mutants of a module are tried against: `DEWRIGHT_MUTATE` names the module, physics or rules. */
import { defineConfig } from 'vitest/config';

const module = process.env.DEWRIGHT_MUTATE ?? 'physics';

export default defineConfig({
  test: {
    include: [`test/${module}/**/*.test.ts`],
    setupFiles: ['test/tools/fast-check-seed.ts'],
    testTimeout: 30_000,
  },
});
