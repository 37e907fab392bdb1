import { defineConfig } from 'vitest/config';

/** Tests that spawn the built command: they get a bundle of their own, made once for the run. */
const commandTests = ['tests/cli/**/*.test.ts', 'tests/package/**/*.test.ts', 'tests/page/**/*.test.ts'];

/** Where the run's counts are written as JSON, for whoever has to add them up. */
const report = process.env.PITWRIGHT_TEST_REPORT;

export default defineConfig({
  test: {
    reporters: report ? ['default', ['json', { outputFile: report }]] : ['default'],
    projects: [
      {
        test: {
          name: 'models',
          include: ['tests/**/*.test.ts'],
          exclude: [...commandTests, '**/node_modules/**'],
          testTimeout: 30_000,
        },
      },
      {
        test: {
          name: 'command',
          include: commandTests,
          globalSetup: ['tests/cli/support/bundle.ts'],
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
