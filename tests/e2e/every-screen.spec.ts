import type { Page } from '@playwright/test';
import { screenList } from '../../renderer/ui/screen-list';
import { expect, test } from './app-fixture';
import { brokenInAnyLook } from './broken-rules';
import { settled } from './standing';

const butterfly = 'sample-butterfly-together';
/** An address with something on it for each screen; a screen that is not here fails the first test. */
const shown: Readonly<Record<string, readonly string[]>> = {
  shelf: ['#/'],
  bench: [`#/bench/${butterfly}`],
  pair: ['#/pair', `#/pair/${butterfly}/sample-butterfly-late-kick`],
  trials: ['#/trials'],
  sets: ['#/sets'],
  season: ['#/season', '#/season/pip'],
  library: ['#/library'],
  handout: [`#/handout/${butterfly}`],
};
const addresses = screenList.flatMap(({ name }) => shown[name] ?? []);

async function open(page: Page, address: string): Promise<void> {
  await page.goto(`${new URL(page.url()).origin}/${address}`);
  await page.locator('h1, [role="heading"], .stage, .bench').first().waitFor();
  if (address.includes(butterfly)) await page.locator('.where, canvas, img, iframe').first().waitFor();
  // what is read or drawn after the first picture
  await settled(page);
}

test('every screen is in this file', () => {
  expect(screenList.map(({ name }) => name).filter((name) => !(name in shown))).toEqual([]);
});

test('no screen breaks an accessibility rule in any look', async ({ page, app }) => {
  test.slow();
  expect(app.said()).toContain('library');
  const found: string[] = [];
  for (const address of addresses) {
    await open(page, address);
    found.push(...(await brokenInAnyLook(page, address)));
  }
  expect(found).toEqual([]);
});

/** Parts of the page that reach out of the window to the right and can't be scrolled to. */
const tooWide = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const wide = document.documentElement.scrollWidth - window.innerWidth;
    const clipped = [...document.querySelectorAll<HTMLElement>('button, a, input, select, textarea')].filter(
      (each) => {
        const box = each.getBoundingClientRect();
        if (box.width === 0 || box.height === 0 || each.closest('.unseen, [aria-hidden="true"]'))
          return false;
        if (box.right <= window.innerWidth + 1 && box.left >= -1) return false;
        for (let up = each.parentElement; up; up = up.parentElement) {
          const flow = getComputedStyle(up).overflowX;
          if (flow === 'auto' || flow === 'scroll') return false;
        }
        return true;
      },
    );
    return [
      ...(wide > 1 ? [`the page is ${wide} px too wide`] : []),
      ...clipped.map((each) => each.getAttribute('aria-label') ?? each.textContent?.trim() ?? each.tagName),
    ];
  });

/** Parts of the page that move, or change slowly, by themselves. */
const moving = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('*')]
      .filter((each) => {
        const { animationName, animationDuration, transitionDuration } = getComputedStyle(each);
        const longest = Math.max(
          ...`${animationName === 'none' ? '0s' : animationDuration},${transitionDuration}`
            .split(',')
            .map(Number.parseFloat),
        );
        return longest > 0.02;
      })
      .map((each) => `${each.tagName}.${each.className}`),
  );

test.describe('in the smallest window, and at twice the text size on a usual screen', () => {
  test.use({
    viewport: { width: 1024, height: 640 },
    contextOptions: { reducedMotion: 'reduce' },
  });
  test('every control of every screen is within reach, and nothing moves where that is wished for', async ({
    page,
    app,
  }) => {
    test.slow();
    expect(app.said()).toContain('library');
    const found: string[] = [];
    for (const address of addresses) {
      await page.setViewportSize({ width: 1024, height: 640 });
      await open(page, address);
      found.push(...(await tooWide(page)).map((each) => `${address}, smallest: ${each}`));
      found.push(...(await moving(page)).map((each) => `${address} moves: ${each}`));
      await page.setViewportSize({ width: 960, height: 540 });
      await settled(page);
      found.push(...(await tooWide(page)).map((each) => `${address}, large text: ${each}`));
    }
    expect(found).toEqual([]);
  });
});
