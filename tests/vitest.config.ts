import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

/** Long only for what fails: a busy machine is no bug of the project's. */
const patience = { testTimeout: 600_000, hookTimeout: 600_000 };

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    // all cores: by itself the runner leaves one of two idle
    maxWorkers: availableParallelism(),
    projects: [
      {
        test: {
          name: 'core',
          include: ['tests/shared-core/**/*.test.ts'],
          environment: 'node',
          // pure: no test can leave anything behind for the next, so files share what they import
          isolate: false,
          ...patience,
        },
      },
      {
        test: {
          name: 'renderer',
          include: ['tests/renderer/**/*.test.ts'],
          environment: 'node',
          ...patience,
        },
      },
      {
        test: {
          name: 'electron',
          include: [
            'tests/electron/**/*.test.ts',
            'tests/house/**/*.test.ts',
            'tests/sample-clips/**/*.test.ts',
          ],
          environment: 'node',
          ...patience,
        },
      },
    ],
  },
});
