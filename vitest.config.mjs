import { defineConfig } from 'vitest/config';

const EDITOR = 'test/editor/**';
/** What takes long: random edits, harmed input, the program run again and again. */
const THOROUGH = 'test/**/*.thorough.test.ts';

/** For both parts of what needs no editor. */
const shared = {
  setupFiles: ['test/tools/fast-check-seed.ts'],
  globalSetup: ['test/tools/built.ts'],
  testTimeout: 30_000,
};

export default defineConfig({
  test: {
    maxWorkers: '100%',
    coverage: {
      include: ['server/src/**', 'client/src/**'],
      exclude: ['**/*.generated.*'],
      reporter: ['text-summary', 'html'],
    },
    reporters: ['default', './test/tools/closing-line.ts'],
    projects: [
      {
        test: {
          ...shared,
          name: 'unit',
          include: ['test/**/*.test.ts'],
          exclude: [EDITOR, THOROUGH],
          isolate: false, // no test changes what others import, but for one that puts it back
        },
      },
      {
        test: {
          ...shared,
          name: 'thorough',
          include: [THOROUGH],
          exclude: [EDITOR],
        },
      },
      {
        test: {
          name: 'editor',
          include: [`${EDITOR}/*.test.ts`],
          globalSetup: ['test/editor/global-setup.ts'],
          fileParallelism: false,
          sequence: { groupOrder: 1 }, // alone: an editor that is starved is slow to draw
          expect: { poll: { timeout: 60_000, interval: 100 } }, // as long as the pages wait: PATIENCE
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
    ],
  },
});
