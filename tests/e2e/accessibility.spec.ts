import path from 'node:path';
import { fileURLToPath } from 'node:url';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, test } from './app-fixture';

const clip = fileURLToPath(
  new URL('../../sample-clips/library/swims/sample-fins-slow-motion/fins-slow-motion.mp4', import.meta.url),
);

/** Rules broken on what is shown, each with the places; empty is what is wanted. */
async function broken(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.target.join(' ')}`));
}

for (const theme of ['dim', 'light', 'glare'] as const)
  test(`shelf and its dialogs break no accessibility rule in ${theme}`, async ({ page, app }) => {
    expect(path.isAbsolute(app.library)).toBe(true);
    await page.evaluate((look) => window.localStorage.setItem('submark.theme', look), theme);
    await page.reload();
    await expect(page.locator('.swim-tile-open')).toHaveCount(7);
    expect(await broken(page)).toEqual([]);

    await page.keyboard.press('?');
    await expect(page.getByRole('dialog', { name: 'Keys and look' })).toBeVisible();
    expect(await broken(page)).toEqual([]);
    await page.keyboard.press('Escape');

    await page.getByRole('button', { name: 'About Juno' }).click();
    await page.getByLabel('Name', { exact: true }).fill('Juno J');
    expect(await broken(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await expect(page.getByRole('dialog', { name: 'Leave without keeping?' })).toBeVisible();
    expect(await broken(page)).toEqual([]);
    await page.getByRole('button', { name: 'Leave it' }).click();

    await page.keyboard.press('Shift+A');
    await page.getByLabel('Path of the file').fill('nowhere.mp4');
    await page.getByRole('button', { name: 'Look at it' }).click();
    await expect(page.getByRole('alert')).toBeVisible();
    expect(await broken(page)).toEqual([]);
    await page.keyboard.press('Escape');

    await page.getByLabel('Clips to add').setInputFiles(clip);
    await expect(page.locator('.clip-facts img')).toBeVisible();
    expect(await broken(page)).toEqual([]);
    await page.keyboard.press('Escape');

    await page.locator('.swim-tile-open').first().focus();
    await page.keyboard.press('Delete');
    await expect(page.getByRole('button', { name: 'Undo' })).toBeVisible();
    expect(await broken(page)).toEqual([]);
  });

test.describe('without swims', () => {
  test.use({ samples: false });
  test('the empty shelf breaks no accessibility rule', async ({ page, app }) => {
    await expect(page.getByRole('heading', { name: 'No swims yet' })).toBeVisible();
    expect(path.isAbsolute(app.library)).toBe(true);
    expect(await broken(page)).toEqual([]);
  });
});
