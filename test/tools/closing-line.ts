import type { Reporter, TestModule } from 'vitest/node';

/** Prints the one line that continuous integration reads, after everything else: `N passed, N failed`. */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly unknown[]): void {
    let passed = 0;
    let skipped = 0;
    let failed = unhandled.length;
    for (const module of modules) {
      if (module.state() === 'failed' && module.errors().length > 0) failed += 1;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === 'passed') passed += 1;
        else if (state === 'failed') failed += 1;
        else skipped += 1;
      }
    }
    process.once('exit', () => {
      console.log(`${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
    });
  }
}
