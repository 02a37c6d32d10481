import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { parseSwim, serialiseSwim } from '#core/swim-file/swim-file';

/** The swim that is worked on: side on, with a body line on every picture to thin out, so that points can be followed. */
export const swimUnderWork = 'sample-streamline-kick';

/** What goes on when the kill comes; marking goes on beside it wherever a coach could do both. */
export const activities = ['marking', 'moving', 'following', 'stills', 'video', 'working copy'] as const;
export type Activity = (typeof activities)[number];

const keys = ['q', 'w', 'e', 'r', 't', 'a', 's', 'd', 'f', 'g', 'z', 'c'];
/** Longest wait for a button, ms: one that does not come is the next step's business. */
const patience = 2000;

export const fileUnderWork = (library: string): string =>
  path.join(library, 'swims', swimUnderWork, 'swim.json');

/** Leaves a body line every fifth of a second, as a coach would lay before following; before any window is open. */
export function thinBodyLines(library: string): void {
  const file = fileUnderWork(library);
  const parsed = parseSwim(readFileSync(file, 'utf8'));
  if (!parsed.ok) throw new Error(parsed.fault.code);
  const postures = parsed.value.postures.filter(({ frame }) => frame % 24 === 0 && frame <= 96);
  writeFileSync(file, serialiseSwim({ ...parsed.value, postures }));
}

type Random = () => number;
const press = (page: Page, key: string): Promise<void> => page.locator('body').press(key);

/** Steps on and marks what is there. */
async function mark(page: Page, random: Random): Promise<void> {
  await press(page, random() < 0.7 ? 'ArrowRight' : 'Shift+ArrowRight');
  await press(page, keys[Math.floor(random() * keys.length)] ?? 'a');
}

/** One thing of a hurry: mostly a mark, else one moved, removed or taken back. */
async function markMostly(page: Page, random: Random): Promise<void> {
  const roll = random();
  if (roll < 0.7) await mark(page, random);
  else if (roll < 0.82) await press(page, random() < 0.5 ? '.' : ',');
  else if (roll < 0.91) await press(page, 'Delete');
  else await press(page, 'Control+z');
}

async function saveStill(page: Page): Promise<void> {
  await press(page, 'i');
  await page.getByRole('dialog').getByRole('button', { name: /save/i }).click({ timeout: patience });
  await press(page, 'Escape');
}

/** Opens the dialog once and has a short video made; later calls make the next when one is done. */
async function makeVideo(page: Page): Promise<void> {
  const dialog = page.getByRole('dialog', { name: 'Video of this swim' });
  if (!(await dialog.isVisible())) {
    await press(page, 'Shift+V');
    await dialog.getByLabel('To', { exact: true }).fill('0.40', { timeout: patience });
    await dialog.getByLabel('Size').selectOption('1280', { timeout: patience });
  }
  const save = dialog.getByRole('button', { name: 'Save the video' });
  if (await save.isVisible()) await save.click({ timeout: patience });
  else await page.waitForTimeout(100);
}

/** Follows the points of every stretch anew. */
async function follow(page: Page): Promise<void> {
  const panel = page.getByRole('complementary', { name: 'Follow and propose' });
  if (!(await panel.isVisible())) await press(page, 'o');
  const again = panel.getByRole('button', { name: 'All again' });
  if (await again.isVisible()) await again.click({ timeout: patience });
}

/** Asks the host for the copy as the window does when film can't be stepped through. */
async function makeCopy(page: Page): Promise<void> {
  await page.evaluate(
    async (id) =>
      fetch('/op/copy/make', {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify({ id }),
      }).then(
        () => undefined,
        () => undefined,
      ),
    swimUnderWork,
  );
}

/** Begins what takes longer than a key press. */
export async function begin(page: Page, activity: Activity): Promise<void> {
  if (activity === 'following') await follow(page);
  if (activity === 'working copy') await makeCopy(page);
  if (activity === 'video') await makeVideo(page);
}

/** One step of a coach in a hurry. */
export async function act(page: Page, activity: Activity, random: Random): Promise<void> {
  const roll = random();
  switch (activity) {
    case 'marking':
    case 'working copy':
      return markMostly(page, random);
    case 'moving':
      if (roll < 0.2) return mark(page, random);
      return press(page, random() < 0.5 ? '.' : ',');
    case 'following':
      if (roll < 0.15) return follow(page);
      return markMostly(page, random);
    case 'stills':
      if (roll < 0.4) return saveStill(page);
      return markMostly(page, random);
    case 'video':
      return makeVideo(page);
  }
}
