import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, type Page } from '@playwright/test';
import { parseSwim } from '#core/swim-file/swim-file';

export const swimId = 'sample-phone-portrait';

/** How many events of a swim are on the disk. */
export function savedEvents(library: string): number {
  const parsed = parseSwim(readFileSync(path.join(library, 'swims', swimId, 'swim.json'), 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  return parsed.value.events.length;
}

/** Files in the library's exports with an ending; what is not whole yet has a name of its own. */
export const exported = (library: string, ending: string): string[] =>
  readdirSync(path.join(library, 'exports')).filter((name) => name.endsWith(ending) && !name.startsWith('.'));

export async function goTo(page: Page, route: string): Promise<void> {
  await page.evaluate((hash) => {
    window.location.hash = hash;
  }, `#/${route}`);
}

/** Opens the swim on the bench and waits for its picture. */
export async function openBench(page: Page): Promise<void> {
  await goTo(page, `bench/${swimId}`);
  await expect(page.locator('.stage')).toHaveAttribute('data-shown-frame', /\d/);
}

/** Steps one frame on and marks a kick top there. */
export async function stepAndMark(page: Page): Promise<void> {
  const before = Number(await page.locator('.stage').getAttribute('data-shown-frame'));
  await page.locator('body').press('ArrowRight');
  await expect(page.locator('.stage')).toHaveAttribute('data-shown-frame', String(before + 1));
  await page.locator('body').press('a');
}
