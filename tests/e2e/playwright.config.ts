import { defineConfig } from '@playwright/test';
import { chromiumOptions } from '../browser/harness/chromium';

/** Stories that hold the app to seconds: nothing else may run beside them. */
const timed = ['**/kills.spec.ts'];

export default defineConfig({
  testDir: '.',
  testMatch: '**/*.spec.ts',
  globalSetup: './build-once.mjs',
  // a story waits for disk, film and page half of its time, and has its own library, host and browser context
  workers: 2,
  // long only for what fails: a busy machine is no bug of the app's
  timeout: 180_000,
  expect: { timeout: 30_000 },
  reporter: [['list']],
  outputDir: '../../test-results/e2e',
  projects: [
    { name: 'stories', testIgnore: timed },
    { name: 'timed', testMatch: timed, workers: 1 },
  ],
  use: {
    browserName: 'chromium',
    launchOptions: chromiumOptions(),
    viewport: { width: 1440, height: 900 },
    locale: 'en-GB',
    trace: 'retain-on-failure',
  },
});
