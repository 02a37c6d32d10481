import { expect, type Page } from '@playwright/test';

/** Waits until the bench stands on a frame and its picture is shown. */
export async function standsOn(page: Page, frame: number): Promise<void> {
  await expect(page.locator('.where')).toHaveAttribute('data-frame', String(frame));
  await expect(page.locator('.where.waiting')).toHaveCount(0);
}

/** The frame the bench stands on, read in one go with its picture being shown. */
export async function frameShown(page: Page): Promise<number> {
  return Number(await page.locator('.where[data-frame]:not(.waiting)').getAttribute('data-frame'));
}
