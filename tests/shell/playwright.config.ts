import { defineConfig } from '@playwright/test';

export default defineConfig({
  testDir: '.',
  testMatch: '**/*.spec.ts',
  // one screen, and keys go to the window in front
  workers: 1,
  // long only for what fails: a busy machine is no bug of the app's
  timeout: 300_000,
  expect: { timeout: 30_000 },
  reporter: [['list']],
  outputDir: '../../test-results/shell',
});
