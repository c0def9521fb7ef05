import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    coverage: {
      include: ['server/src/**', 'client/src/**'],
      exclude: ['**/*.generated.*'],
      reporter: ['text-summary', 'html'],
    },
    reporters: ['default', './test/tools/closing-line.ts'],
    projects: [
      {
        test: {
          name: 'unit',
          include: ['test/**/*.test.ts'],
          exclude: ['test/editor/**'],
          setupFiles: ['test/tools/fast-check-seed.ts'],
          testTimeout: 30_000,
        },
      },
      {
        test: {
          name: 'editor',
          include: ['test/editor/**/*.test.ts'],
          globalSetup: ['test/editor/global-setup.ts'],
          fileParallelism: false,
          expect: { poll: { timeout: 60_000, interval: 100 } }, // as long as the pages wait: PATIENCE
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
    ],
  },
});
