import { readdirSync } from 'node:fs';
import path from 'node:path';
import { chromium, type Page } from '@playwright/test';
import { chromiumOptions } from '../../browser/harness/chromium';
import { makeLibrary, startApp } from '../../e2e/started-app';
import { writeSection } from '../write-section';

/**
 * What the coach waits for: from asking for a sample swim to its first picture, with the window already open and in a
 * fresh window, and what the readings take after a mark has moved. Run with tsx; writes its table to the docs.
 */
const rounds = 7;
const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;

async function firstPicture(page: Page, address: string): Promise<number> {
  const start = performance.now();
  await page.goto(address);
  await page.locator('.stage[data-shown-frame]:not([data-shown-frame=""])').waitFor();
  return performance.now() - start;
}

/** Milliseconds of the computation itself after each nudge of a mark there and back, as the panel says. */
async function recompute(page: Page): Promise<readonly number[]> {
  const glyph = page.locator('.glyph').nth(2);
  if ((await glyph.count()) === 0) return [];
  await glyph.focus();
  await page.keyboard.press('Enter');
  const took: number[] = [];
  for (let i = 0; i < 30; i++) {
    await page.keyboard.press(i % 2 === 0 ? '.' : ',');
    await page.waitForTimeout(60);
    await page.locator('.readings[aria-busy="false"]').waitFor();
    took.push(Number(await page.locator('.readings').getAttribute('data-took-ms')));
  }
  return took.slice(4);
}

const { library, remove } = await makeLibrary(true);
const app = await startApp(library);
const browser = await chromium.launch(chromiumOptions());
const rows: string[] = [];
try {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  await page.goto(app.address);
  const { origin } = new URL(app.address);
  for (const id of readdirSync(path.join(library, 'swims')).sort()) {
    const address = `${origin}/#/bench/${id}`;
    const fresh: number[] = [];
    const again: number[] = [];
    for (let round = 0; round < rounds; round++) {
      const other = await context.newPage();
      fresh.push(await firstPicture(other, address));
      await other.close();
      await page.goto(`${origin}/#/`);
      await page.locator('.swim-tile').first().waitFor();
      again.push(await firstPicture(page, address));
    }
    const took = await recompute(page);
    const worst = took.length === 0 ? '–' : Math.max(...took).toFixed(1);
    const middle = took.length === 0 ? '–' : median(took).toFixed(1);
    rows.push(`| ${id} | ${median(fresh).toFixed(0)} | ${median(again).toFixed(0)} | ${middle} | ${worst} |`);
    console.log(rows.at(-1));
  }
} finally {
  await browser.close();
  await app.stop();
  await remove();
}
writeSection('opening', 'app/opening.ts', [
  '## Opening a swim, and readings after a mark has moved',
  '',
  `Milliseconds, medians of ${rounds} openings and 26 moves of one mark (and the slowest of those). Headless Chromium on 2 processor cores.`,
  '',
  '| sample swim | new window to first picture | shelf to first picture | readings after a move | slowest |',
  '| --- | --- | --- | --- | --- |',
  ...rows,
]);
