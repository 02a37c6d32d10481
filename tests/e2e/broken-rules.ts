import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';

const looks = ['dim', 'light', 'glare'] as const;

/** All in the page itself: it has no frames of other origins, and a second page for the sums would take its focus. */
const axeOn = (page: Page): AxeBuilder =>
  new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ['violations'] });

async function found(page: Page, axe: AxeBuilder, where: string): Promise<string[]> {
  // colours on their way from one to another are not what is read
  await page.evaluate(() =>
    Promise.allSettled(
      document
        .getAnimations()
        .filter(
          ({ effect, playState }) =>
            playState === 'running' && effect?.getComputedTiming().endTime !== Number.POSITIVE_INFINITY,
        )
        .map(({ finished }) => finished),
    ),
  );
  const { violations } = await axe.analyze();
  return violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${where}${id}: ${node.target.join(' ')}`),
  );
}

/** Accessibility rules broken on what is shown, or on a part of it, each with the places; empty is what is wanted. */
export async function brokenRules(page: Page, part?: string): Promise<string[]> {
  const axe = axeOn(page);
  return found(page, part === undefined ? axe : axe.include(part), '');
}

/** The same in every look: all rules once, then what another look changes, which is colours and nothing else. */
export async function brokenInAnyLook(page: Page, where: string): Promise<string[]> {
  const before = await page.evaluate(() => document.documentElement.dataset.theme ?? '');
  const broken: string[] = [];
  for (const [n, look] of looks.entries()) {
    await page.evaluate((name) => {
      document.documentElement.dataset.theme = name;
    }, look);
    const axe = axeOn(page);
    broken.push(
      ...(await found(page, n === 0 ? axe : axe.withRules(['color-contrast']), `${where} in ${look}, `)),
    );
  }
  await page.evaluate((name) => {
    document.documentElement.dataset.theme = name;
  }, before);
  return broken;
}
