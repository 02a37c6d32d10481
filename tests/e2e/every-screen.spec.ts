import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { screenList } from '../../renderer/app/screen-list';
import { expect, test } from './app-fixture';

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
  await page.waitForTimeout(700);
}

/** Rules broken on what is shown, each with the places; empty is what is wanted. */
async function broken(page: Page, where: string, theme: string): Promise<string[]> {
  // another look changes colours and nothing else
  const axe =
    theme === 'dim' ? new AxeBuilder({ page }) : new AxeBuilder({ page }).withRules(['color-contrast']);
  const { violations } = await axe.analyze();
  return violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${where} ${id}: ${node.target.join(' ')}`),
  );
}

test('every screen is in this file', () => {
  expect(screenList.map(({ name }) => name).filter((name) => !(name in shown))).toEqual([]);
});

for (const theme of ['dim', 'light', 'glare'] as const)
  test(`no screen breaks an accessibility rule in ${theme}`, async ({ page, app }) => {
    test.setTimeout(180_000);
    expect(app.said()).toContain('library');
    await page.evaluate((look) => window.localStorage.setItem('submark.theme', look), theme);
    const found: string[] = [];
    for (const address of addresses) {
      await open(page, address);
      found.push(...(await broken(page, address, theme)));
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

for (const [words, viewport] of [
  ['the smallest window', { width: 1024, height: 640 }],
  ['twice the text size on a usual screen', { width: 960, height: 540 }],
] as const)
  test.describe(words, () => {
    test.use({ viewport, deviceScaleFactor: words.startsWith('twice') ? 2 : 1 });
    test('leaves every control of every screen within reach', async ({ page, app }) => {
      test.setTimeout(120_000);
      expect(app.said()).toContain('library');
      const found: string[] = [];
      for (const address of addresses) {
        await open(page, address);
        found.push(...(await tooWide(page)).map((each) => `${address}: ${each}`));
      }
      expect(found).toEqual([]);
    });
  });

test.describe('with reduced motion wished for', () => {
  test.use({ contextOptions: { reducedMotion: 'reduce' } });
  test('nothing moves by itself', async ({ page, app }) => {
    expect(app.said()).toContain('library');
    const found: string[] = [];
    for (const address of addresses) {
      await open(page, address);
      const moving = await page.evaluate(() =>
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
      found.push(...moving.map((each) => `${address}: ${each}`));
    }
    expect(found).toEqual([]);
  });
});
