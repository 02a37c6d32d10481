import type { Page } from '@playwright/test';
import { expect, test } from './app-fixture';
import { brokenRules } from './broken-rules';

async function openBench(page: Page, id: string): Promise<void> {
  await page.goto(`${new URL(page.url()).origin}/#/bench/${id}`);
  await expect(page.locator('.where')).toBeVisible();
  await expect(page.locator('.where.waiting')).toHaveCount(0);
}

/** What of an element lies outside its window or under an edge that scrolls, in pixels; 0 where all is seen. */
const cutOff = (page: Page, selector: string): Promise<number> =>
  page.locator(selector).evaluateAll((elements) =>
    Math.max(
      ...elements.map((element) => {
        const own = element.getBoundingClientRect();
        let over = 0;
        for (let each = element.parentElement; each; each = each.parentElement) {
          const box = each.getBoundingClientRect();
          const clips = getComputedStyle(each).overflowY !== 'visible' || each === document.documentElement;
          if (clips) over = Math.max(over, own.bottom - box.bottom, box.top - own.top);
        }
        return Math.round(over);
      }),
    ),
  );

test('the bench shows first what the drill is about, as the coach pins it', async ({ page, app }) => {
  expect(app.library).not.toBe('');
  await page.setViewportSize({ width: 1280, height: 720 });
  await openBench(page, 'sample-butterfly-together');
  const list = page.getByRole('region', { name: 'Short list' });
  const rows = list.locator('[data-reading]');
  await expect(rows.first()).toHaveAttribute('data-reading', 'kick1-top-to-entry');
  await expect(rows).toHaveCount(9);

  // everything for marking one stroke, and the short list, without scrolling
  expect(await cutOff(page, '.pads [data-pad="entry"], .pads [data-pad="kick-bottom"]')).toBe(0);
  expect(await cutOff(page, '.pads [data-pad], .pads .pass, .short-list [data-reading]')).toBe(0);

  // found by another word of the trade, pinned, moved up, and there again after a new start
  await page.keyboard.press('/');
  await page.keyboard.type('froude');
  const found = page.getByRole('region', { name: 'Found readings' });
  await found.getByRole('button', { name: 'About Froude efficiency' }).click();
  await found.getByRole('button', { name: 'Pin Froude efficiency' }).click();
  await page.getByRole('searchbox', { name: 'Find a reading' }).press('Escape');
  await expect(rows.last()).toHaveAttribute('data-reading', 'froude');
  await rows.last().getByRole('button', { name: 'About Froude efficiency' }).click();
  await rows.last().getByRole('button', { name: 'Move Froude efficiency up' }).click();
  await expect(rows.nth(8)).toHaveAttribute('data-reading', 'froude');
  await page.reload();
  await expect(rows.nth(8)).toHaveAttribute('data-reading', 'froude');
  expect(await brokenRules(page)).toEqual([]);
  await list.getByRole('button', { name: 'Back to the usual one' }).click();
  await expect(rows).toHaveCount(9);

  // a kick drill: no hands to mark, one large thing to do first; the keys of folded pads still mark
  await openBench(page, 'sample-phone-portrait');
  await expect(page.locator('[data-pad="entry"]')).toHaveCount(0);
  await expect(page.getByRole('button', { name: /^See the swimmer/ })).toBeVisible();
  await expect(rows.first()).toContainText('Kick frequency');
  await page.keyboard.press('q');
  await expect(page.locator('.glyph[data-kind="entry"]')).toHaveCount(1);
  await expect(page.locator('[data-pad="entry"]')).toHaveCount(1);

  // then one place says what is missing, and starts it
  const next = page.getByRole('region', { name: 'Next' });
  await expect(next).toContainText('Needs 2 kick top marks');
  await next.getByRole('button', { name: /^Place what/ }).click();
  await expect(page.locator('[data-pad="kick-top"].pointed-out')).toHaveCount(1);
});
