import { defineConfig } from 'vitest/config';

export default defineConfig({
  define: { __RIMELOG_VERSION__: JSON.stringify('test') },
  test: {
    include: ['src/**/*.test.ts', 'server/**/*.test.ts', 'tests/**/*.test.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    pool: 'threads',
    reporters: ['default', './tests/support/closing-line-reporter.ts'],
  },
});
