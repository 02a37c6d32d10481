import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    projects: [
      {
        test: {
          name: 'core',
          include: ['tests/shared-core/**/*.test.ts'],
          environment: 'node',
        },
      },
      {
        test: {
          name: 'renderer',
          include: ['tests/renderer/**/*.test.ts'],
          environment: 'node',
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
          testTimeout: 30_000,
        },
      },
    ],
  },
});
