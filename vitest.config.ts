import { BaseSequencer, type TestSpecification } from 'vitest/node';
import { defineConfig } from 'vitest/config';
import { BUILT, builtSource } from './tests/support/builtSource.js';

/**
 * Tests of two kinds: of the models, in this process, and of the bundled command, which gets a bundle of its own, made once for
 * the run. Of each there are those of every day and, in `*.long.test.ts`, those that take their time.
 */
const LONG = 'tests/**/*.long.test.ts';
const modules = '**/node_modules/**';
const command = ['cli', 'package', 'page'];
const commandTests = command.map((folder) => `tests/${folder}/**/*.test.ts`);
const longCommandTests = command.map((folder) => `tests/${folder}/**/*.long.test.ts`);

/** Sources are run as Node runs them. */
const server = { deps: { external: [BUILT] } };
const plugins = [builtSource()];

/** Models hold no state, so that all files of a worker may share what they import. */
const models = { isolate: false, server, testTimeout: 120_000, hookTimeout: 600_000 };
const spawned = {
  isolate: false,
  server,
  globalSetup: ['tests/cli/support/bundle.ts'],
  testTimeout: 240_000,
  hookTimeout: 300_000,
};

const LONGEST = /(semantic.estimates|verify.evidence|size.asked|charts.overlaps|fit.suspects)\.(long\.)?test\.ts$/;

/**
 * The longest files in process begin first, also where no run before has told how long it takes.
 */
class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]) {
    const sorted = await super.sort(files);
    const longest = sorted.filter(({ moduleId }) => LONGEST.test(moduleId));
    if (longest.length === 0) return sorted;
    const others = sorted.filter((file) => !longest.includes(file));
    const at = others.findIndex(({ project }) => project.name === longest[0].project.name);
    return others.toSpliced(at < 0 ? others.length : at, 0, ...longest);
  }
}

/** What everyday tests in process must reach nine lines of ten of: what numbers come from. */
const covered = ['physics', 'solve', 'network', 'study'];

/** Where the run's counts are written as JSON, for whoever has to add them up. */
const report = process.env.PITWRIGHT_TEST_REPORT;

export default defineConfig({
  test: {
    // one worker a core; by default one core is kept free
    maxWorkers: '100%',
    sequence: { sequencer: LongestFirst },
    globalSetup: ['tests/support/builtSource.ts'],
    reporters: report ? ['default', ['json', { outputFile: report }]] : ['default'],
    projects: [
      { plugins, test: { name: 'command', ...spawned, include: commandTests, exclude: [LONG, modules] } },
      {
        plugins,
        test: { name: 'models', ...models, include: ['tests/**/*.test.ts'], exclude: [LONG, ...commandTests, modules] },
      },
      { plugins, test: { name: 'command-long', ...spawned, include: longCommandTests, exclude: [modules] } },
      { plugins, test: { name: 'models-long', ...models, include: [LONG], exclude: [...commandTests, modules] } },
    ],
    coverage: {
      provider: 'v8',
      include: covered.map((folder) => `src/${folder}/**/*.ts`),
      reporter: ['text-summary', 'text'],
      reportOnFailure: true,
      thresholds: Object.fromEntries(covered.map((folder) => [`src/${folder}/**`, { lines: 90 }])),
    },
  },
});
