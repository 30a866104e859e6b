import type { Reporter, TestModule } from 'vitest/node';

/** Ends a run with one plain line of counts, `N passed, N failed, N skipped`. */
export default class ClosingLineReporter implements Reporter {
  onTestRunEnd(testModules: readonly TestModule[], unhandledErrors: readonly unknown[]): void {
    const counts = { passed: 0, failed: unhandledErrors.length, skipped: 0, pending: 0 };
    for (const module of testModules) {
      for (const test of module.children.allTests()) counts[test.result().state] += 1;
      if (module.errors().length > 0) counts.failed += module.errors().length;
    }
    process.stdout.write(
      `\n${counts.passed} passed, ${counts.failed} failed, ${counts.skipped + counts.pending} skipped\n`,
    );
  }
}
