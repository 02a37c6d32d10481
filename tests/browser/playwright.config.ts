import { defineConfig } from '@playwright/test';
import { chromiumOptions } from './harness/chromium';

/** Tests that hold playing to the clock: nothing else may run beside them. */
const timed = ['**/player.spec.ts'];

export default defineConfig({
  testDir: '.',
  testMatch: '**/*.spec.ts',
  workers: 2,
  // each test has a page of its own, and a clip is made under a name of its own before it gets its last one
  fullyParallel: true,
  timeout: 180_000,
  expect: { timeout: 30_000 },
  reporter: [['list']],
  outputDir: '../../test-results/browser',
  projects: [
    { name: 'clips', testIgnore: timed },
    { name: 'timed', testMatch: timed, workers: 1 },
  ],
  use: { browserName: 'chromium', launchOptions: chromiumOptions() },
});
