import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from './app-fixture';
import { brokenInAnyLook } from './broken-rules';

const clip = fileURLToPath(
  new URL('../../sample-clips/library/swims/sample-fins-slow-motion/fins-slow-motion.mp4', import.meta.url),
);

test('shelf and its dialogs break no accessibility rule in any look', async ({ page, app }) => {
  expect(path.isAbsolute(app.library)).toBe(true);
  await expect(page.locator('.swim-tile-open')).toHaveCount(7);
  expect(await brokenInAnyLook(page, 'shelf')).toEqual([]);

  await page.keyboard.press('?');
  await expect(page.getByRole('dialog', { name: 'Keys and look' })).toBeVisible();
  expect(await brokenInAnyLook(page, 'keys')).toEqual([]);
  await page.keyboard.press('Escape');

  await page.getByRole('button', { name: 'About Juno' }).click();
  await page.getByLabel('Name', { exact: true }).fill('Juno J');
  expect(await brokenInAnyLook(page, 'swimmer')).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog', { name: 'Close without saving?' })).toBeVisible();
  expect(await brokenInAnyLook(page, 'leaving')).toEqual([]);
  await page.getByRole('button', { name: 'Discard changes' }).click();

  await page.keyboard.press('Shift+A');
  await page.getByLabel('Path of the file').fill('nowhere.mp4');
  await page.getByRole('button', { name: 'Check the file' }).click();
  await expect(page.getByRole('alert')).toBeVisible();
  expect(await brokenInAnyLook(page, 'path')).toEqual([]);
  await page.keyboard.press('Escape');

  await page.getByLabel('Clips to add').setInputFiles(clip);
  await expect(page.locator('.clip-facts img')).toBeVisible();
  expect(await brokenInAnyLook(page, 'adding')).toEqual([]);
  await page.keyboard.press('Escape');

  await page.locator('.swim-tile-open').first().focus();
  await page.keyboard.press('Delete');
  await expect(page.getByRole('button', { name: 'Undo' })).toBeVisible();
  expect(await brokenInAnyLook(page, 'bin')).toEqual([]);
});

test.describe('without swims', () => {
  test.use({ samples: false });
  test('the empty shelf breaks no accessibility rule', async ({ page, app }) => {
    await expect(page.getByRole('heading', { name: 'No swims yet' })).toBeVisible();
    expect(path.isAbsolute(app.library)).toBe(true);
    expect(await brokenInAnyLook(page, 'empty shelf')).toEqual([]);
  });
});
