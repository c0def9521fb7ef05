import type { Reporter, TestCase, TestModule, TestRunEndReason } from 'vitest/node';

/** Prints the one line that continuous integration reads, after everything else: `N passed, N failed`. */
export default class ClosingLine implements Reporter {
  /** What a run that broke off before its end counts as. */
  private line = '0 passed, 1 failed';

  onInit(): void {
    process.once('exit', () => console.log(this.line));
  }

  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly unknown[], reason: TestRunEndReason): void {
    const tests = modules.flatMap((module) => [...module.children.allTests()]);
    const groups = modules.flatMap((module) => [module, ...module.children.allSuites()]);
    const passed = tests.filter((test) => test.result().state === 'passed').length;
    const skipped = tests.filter((test) => test.result().state === 'skipped' && !lostItsGroup(test)).length;
    const failedGroups = groups.filter((group) => group.errors().length > 0).length;
    const failed = tests.length - passed - skipped + failedGroups + unhandled.length;
    const atLeast = reason === 'passed' ? 0 : 1; // the runner itself may have failed
    this.line = `${passed} passed, ${Math.max(failed, atLeast)} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
  }
}

/** True where a test did not run because the set-up of a group around it failed: the runner calls that skipped. */
function lostItsGroup(test: TestCase): boolean {
  let group = test.parent;
  while (group.type === 'suite' && group.errors().length === 0) group = group.parent;
  return group.errors().length > 0;
}
