import { defineConfig } from '@playwright/test';
import { chromiumOptions } from '../browser/harness/chromium';

export default defineConfig({
  testDir: '.',
  testMatch: '**/*.spec.ts',
  globalSetup: './build-once.mjs',
  // each test starts a host and decodes film: two at a time would only time each other out
  workers: 1,
  timeout: 90_000,
  expect: { timeout: 15_000 },
  reporter: [['list']],
  outputDir: '../../test-results/e2e',
  use: {
    browserName: 'chromium',
    launchOptions: chromiumOptions(),
    viewport: { width: 1440, height: 900 },
    locale: 'en-GB',
    trace: 'retain-on-failure',
  },
});
