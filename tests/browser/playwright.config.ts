import { defineConfig } from '@playwright/test';
import { chromiumOptions } from './harness/chromium';

export default defineConfig({
  testDir: '.',
  testMatch: '**/*.spec.ts',
  // decoding is heavy: two at a time would only time each other out
  workers: 1,
  timeout: 120_000,
  reporter: [['list']],
  outputDir: '../../test-results/browser',
  use: { browserName: 'chromium', launchOptions: chromiumOptions() },
});
